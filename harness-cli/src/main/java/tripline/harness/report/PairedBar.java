package tripline.harness.report;

/**
 * Two bars of one scale in one row: what is charted above, what was seen below. Halves of a column
 * are kept where the glyphs have them.
 */
enum PairedBar {
  UNICODE('█', '─', '░', '·') {
    @Override
    char pair(int charted, int seen) {
      return QUADRANTS.charAt(charted * 4 + seen);
    }

    @Override
    String legend() {
      return "█ closed as charted  ▀ charted only  ▄ seen only  ░· not travelled  ╎ scale";
    }
  },
  ASCII('#', '-', '=', '.') {
    @Override
    char pair(int charted, int seen) {
      return charted == 0 ? seen == 0 ? '-' : 'o' : seen == 0 ? '^' : '#';
    }

    @Override
    String legend() {
      return "# closed as charted  ^ charted only  o seen only  =. not travelled  : scale";
    }
  };

  /** By upper left, upper right, lower left, lower right half, most significant first. */
  private static final String QUADRANTS = "─▗▖▄▝▐▞▟▘▚▌▙▀▜▛█";

  private final char full;
  private final char open;
  private final char untravelledClosed;
  private final char untravelledOpen;

  PairedBar(char full, char open, char untravelledClosed, char untravelledOpen) {
    this.full = full;
    this.open = open;
    this.untravelledClosed = untravelledClosed;
    this.untravelledOpen = untravelledOpen;
  }

  static PairedBar of(Glyphs glyphs) {
    return glyphs == Glyphs.ASCII ? ASCII : UNICODE;
  }

  /** What stands for a column closed (bits left 2, right 1) as charted and as seen. */
  abstract char pair(int charted, int seen);

  abstract String legend();

  /** Lays three rows of {@link TravelScale#bar} over each other. */
  String lay(String charted, String seen, String covered) {
    StringBuilder row = new StringBuilder(charted.length());
    for (int i = 0; i < charted.length(); i++) {
      int above = halves(charted.charAt(i));
      int below = halves(seen.charAt(i));
      int known = halves(covered.charAt(i));
      if (above < 0) {
        row.append(charted.charAt(i));
      } else if (known == 0) {
        row.append(above == 0 ? untravelledOpen : untravelledClosed);
      } else {
        row.append(pair(above, filled(below, known)));
      }
    }
    return row.toString();
  }

  /** Where only one half of a column was travelled, it stands for both. */
  private static int filled(int seen, int known) {
    return switch (known) {
      case 1 -> (seen & 1) * 3;
      case 2 -> (seen >> 1) * 3;
      default -> seen;
    };
  }

  private int halves(char column) {
    if (column == full) {
      return 3;
    }
    return column == open ? 0 : column == '▌' ? 2 : column == '▐' ? 1 : -1;
  }
}
