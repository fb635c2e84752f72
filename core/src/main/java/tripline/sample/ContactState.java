package tripline.sample;

/** State of an electrical contact. */
public enum ContactState {
  OPEN,
  CLOSED;

  /** The other state. */
  public ContactState other() {
    return this == OPEN ? CLOSED : OPEN;
  }
}
