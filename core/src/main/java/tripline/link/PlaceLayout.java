package tripline.link;

/** Where the fields of {@code place} lie (SPEC §6). */
final class PlaceLayout {
  static final int KIND = 4;
  static final int TEXT = 5;

  static final Layout LAYOUT =
      Layout.of(
          Field.word("kind", KIND, MarkKind.values()),
          Field.string("text", TEXT, 0, MarkLayout.MOST_TEXT));

  private PlaceLayout() {}
}
