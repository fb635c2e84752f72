package tripline.csv;

/** Whether readings of a recording count from the same zero as those of the one before it. */
public enum PositionZero {
  KEPT,
  LOST
}
