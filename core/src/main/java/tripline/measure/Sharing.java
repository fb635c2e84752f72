package tripline.measure;

/** Whether the error behind a part is one figure's own or the same in several figures. */
public enum Sharing {
  /** Independent of every other part of every figure: adds in quadrature, averages out. */
  OWN,
  /**
   * One and the same error in every figure that carries a part of this name (a scale factor, a stop
   * found once): adds with its sign, cancels in differences, never averages out.
   */
  COMMON
}
