package tripline.harness.report;

/**
 * How text is drawn.
 *
 * @param glyphs the signs it is made of
 * @param ink whether it is coloured
 */
public record TextStyle(Glyphs glyphs, Ink ink) {
  /** What a process should use on its standard output. */
  public static TextStyle ofProcess() {
    return new TextStyle(Glyphs.ofProcess(), Ink.ofProcess());
  }
}
