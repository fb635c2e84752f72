package tripline.link;

/** Where the fields of {@code loss} lie (SPEC §5, 07). */
final class LossLayout {
  static final int CAUSE = 4;
  static final int WHAT = 5;
  static final int COUNT = 8;
  static final int NUMBER = 12;
  static final int STAMP = 16;
  static final int UNTIL = 24;
  static final int END = 32;

  static final Layout LAYOUT =
      Layout.of(
          Field.word("cause", CAUSE, LossCause.values()),
          Field.word("what", WHAT, LossWhat.values()),
          Field.u32("count", COUNT, 1),
          Field.u32("number", NUMBER, 0),
          Field.time("stamp", STAMP, 0),
          Field.time("until", UNTIL, 0));

  private LossLayout() {}
}
