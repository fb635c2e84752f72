package tripline.harness.report.drawing;

/** Black, greys and one accent; shape and place carry the meaning, never the colour alone. */
final class Palette {
  static final String INK = "#1a1a1a";
  static final String DARK = "#555555";
  static final String MID = "#8c8c8c";
  static final String LIGHT = "#cccccc";
  static final String FAINT = "#ededed";
  static final String PAPER = "#ffffff";

  /** What was measured. */
  static final String ACCENT = "#0a5f8a";

  private Palette() {}
}
