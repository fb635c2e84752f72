package tripline.link;

/** Where the fields of {@code start} lie (SPEC §6). */
final class StartLayout {
  static final int RATE = 4;
  static final int GATHER = 8;
  static final int END = 10;
  static final int MOST_GATHER = 1000;

  static final Layout LAYOUT =
      Layout.of(Field.u32("rate", RATE, 0), Field.u16("gather", GATHER, 0, MOST_GATHER));

  private StartLayout() {}
}
