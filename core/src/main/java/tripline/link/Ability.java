package tripline.link;

/** What a logger can do: bits of {@link Identity#abilities}. */
public enum Ability {
  /** Obeys start and stop. */
  START_STOP(0),
  /** Obeys rate. */
  RATE(1),
  /** Obeys time. */
  TIME(2),
  /** Keeps recordings. */
  STORED(3),
  /** Has a mark button. */
  BUTTON(4),
  /** Stamps edges by hardware. */
  EDGES(5),
  /** Obeys place. */
  PLACE(6);

  private final int place;

  Ability(int place) {
    this.place = place;
  }

  /** Its bit. */
  public long bit() {
    return 1L << place;
  }
}
