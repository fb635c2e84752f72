package tripline.job;

/** An end of travel. */
public enum End {
  CLOSED,
  OPEN;

  /** The opposite end. */
  public End other() {
    return this == CLOSED ? OPEN : CLOSED;
  }

  /** The direction of travel that runs toward this end. */
  public Direction approach() {
    return this == CLOSED ? Direction.CLOSING : Direction.OPENING;
  }

  /** As the job sheet and the result write it. */
  public String word() {
    return this == CLOSED ? "closed" : "open";
  }
}
