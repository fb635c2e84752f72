package tripline.link;

/** Where the fields of {@code channel} lie (SPEC §5, 02). */
final class ChannelLayout {
  static final int KIND = 4;
  static final int NUMBER = 5;
  static final int CLOSED_LEVEL = 6;
  static final int REPORTS = 7;
  static final int NUMERATOR = 8;
  static final int DENOMINATOR = 12;
  static final int MODULUS = 16;
  static final int DELAY = 20;
  static final int RESOLUTION = 24;
  static final int STRINGS = 28;
  static final int MOST_NAME = 32;
  static final int MOST_UNIT = 16;

  static final Layout LAYOUT =
      Layout.of(
          Field.word("kind", KIND, ChannelKind.values()),
          Field.u8("number", NUMBER, 0, 63),
          Field.u8("closed_level", CLOSED_LEVEL, 0, 1),
          Field.word("reports", REPORTS, Reports.values()),
          Field.i32("numerator", NUMERATOR),
          Field.u32("denominator", DENOMINATOR, 1),
          Field.u32("modulus", MODULUS, 0),
          Field.u32("delay", DELAY, 0),
          Field.u32("resolution", RESOLUTION, 0),
          Field.string("name", STRINGS, 1, MOST_NAME),
          Field.string("unit", STRINGS, 0, MOST_UNIT));

  private ChannelLayout() {}

  /** A position needs a scale. */
  static boolean scaleFits(byte[] body) {
    return body[KIND] != ChannelKind.POSITION.code() || Le.i32(body, NUMERATOR) != 0;
  }
}
