package tripline.job;

/** Direction of travel; x rises while opening. */
public enum Direction {
  OPENING,
  CLOSING;

  /** +1 while opening, -1 while closing. */
  public int sign() {
    return this == OPENING ? 1 : -1;
  }

  /** The other direction. */
  public Direction other() {
    return this == OPENING ? CLOSING : OPENING;
  }

  /** The end this direction runs toward. */
  public End toward() {
    return this == OPENING ? End.OPEN : End.CLOSED;
  }

  /** As the result writes it. */
  public String word() {
    return this == OPENING ? "opening" : "closing";
  }
}
