package tripline.harness.watch;

/**
 * How a piece of the screen looks. Nothing hangs on colour: what is to be done stands in a bar,
 * what is against the chart has a mark of its own.
 */
enum Look {
  PLAIN(""),
  STRONG("1"),
  /** What the eye should find: the one accent. */
  ACCENT("1;36"),
  /** A bar across the screen. */
  BAR("7");

  private final String sgr;

  Look(String sgr) {
    this.sgr = sgr;
  }

  /** Whether a terminal may colour. */
  enum Colour {
    YES,
    /** Weight and bars remain (ECMA-48 SGR 1 and 7), which are no colours. */
    NO
  }

  /** Attributes as ECMA-48 SGR parameters; empty for none. */
  String sgr(Colour colour) {
    return this == ACCENT && colour == Colour.NO ? "1" : sgr;
  }
}
