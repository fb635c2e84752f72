package tripline.harness.rehearse;

/** How much of a logger there is. */
public enum Kit {
  /** Both encodings, every ability. */
  FULL,
  /** What a small micro-controller can do: lines only, start and stop, sampled contacts. */
  SMALL
}
