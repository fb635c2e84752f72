package tripline.measure;

/** Whether a test looks for the unusual at one named end or at either. */
public enum Sides {
  /** Only too large, or only too small, chosen before looking. */
  ONE,
  /** Either. */
  TWO
}
