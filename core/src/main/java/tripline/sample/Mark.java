package tripline.sample;

/** What an operator's mark says. */
public enum Mark {
  /** The valve stands on its closed hard stop. */
  CLOSED_STOP,
  /** The valve stands on its open hard stop. */
  OPEN_STOP,
  /** An adjuster was turned: what follows is another setting. */
  ADJUSTED,
  /** Anything else: free text. */
  NOTE;

  /**
   * The kind of a mark as recordings write it: {@code closed-stop}, {@code open-stop}, {@code
   * adjusted}, else a note.
   */
  public static Mark of(String text) {
    return switch (text) {
      case "closed-stop" -> CLOSED_STOP;
      case "open-stop" -> OPEN_STOP;
      case "adjusted" -> ADJUSTED;
      default -> NOTE;
    };
  }
}
