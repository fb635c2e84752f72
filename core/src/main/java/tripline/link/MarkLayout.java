package tripline.link;

/** Where the fields of {@code mark} lie (SPEC §5, 06). */
final class MarkLayout {
  static final int KIND = 4;
  static final int SOURCE = 5;
  static final int NUMBER = 6;
  static final int STAMP = 8;
  static final int TEXT = 16;
  static final int MOST_TEXT = 120;

  static final Layout LAYOUT =
      Layout.of(
          Field.word("kind", KIND, MarkKind.values()),
          Field.word("source", SOURCE, MarkSource.values()),
          Field.u16("number", NUMBER, 0, 0xffff),
          Field.time("stamp", STAMP, 0),
          Field.string("text", TEXT, 0, MOST_TEXT));

  private MarkLayout() {}
}
