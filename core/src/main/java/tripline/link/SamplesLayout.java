package tripline.link;

import tripline.link.Field.Shape;

/** Where the fields of {@code samples} lie, and what its form means (SPEC §5, 04). */
final class SamplesLayout {
  static final int NUMBER = 4;
  static final int STAMP = 8;
  static final int PERIOD = 16;
  static final int POSITION = 20;
  static final int KNOWN = 24;
  static final int LEVELS = 32;
  static final int COUNT = 40;
  static final int ROWS = 42;
  static final int MOST_ROWS = Layout.MOST_BODY - ROWS;

  /** What a step of one byte, two and four says where there is no reading. */
  static final int NO_STEP_8 = Byte.MIN_VALUE;

  static final int NO_STEP_16 = Short.MIN_VALUE;
  static final int NO_STEP_32 = Integer.MIN_VALUE;

  /** In lines, where position, levels, count and form follow from the rows. */
  static final Layout LAYOUT =
      Layout.of(
          Field.u32("number", NUMBER, 0),
          Field.time("stamp", STAMP, 0),
          Field.u32("period", PERIOD, 0),
          Field.hex("known", Shape.U64_HEX, KNOWN, 0, 0),
          Field.tail("rows", Shape.ROWS, ROWS));

  private static final int[] WIDTHS = {0, 1, 2, 4, 8};

  private SamplesLayout() {}

  static boolean formKnown(int form) {
    return ((form >> 2) & 7) <= 4 && form >> 5 <= 2;
  }

  static int stepWidth(int form) {
    return WIDTHS[form & 3];
  }

  static int levelsWidth(int form) {
    return WIDTHS[(form >> 2) & 7];
  }

  static int gapWidth(int form) {
    return ((form >> 5) & 3) * 2;
  }

  /** The form of these widths in bytes. */
  static int form(int step, int levels, int gap) {
    return code(step) | (code(levels) << 2) | ((gap / 2) << 5);
  }

  private static int code(int width) {
    return width == 4 ? 3 : width == 8 ? 4 : width;
  }

  /** Rows to the end exactly, times told in one way, first gap 0. */
  static boolean rowsFit(byte[] body, int length) {
    int form = Le.u8(body, Layout.FORM);
    int count = Le.u16(body, COUNT);
    int gapWidth = gapWidth(form);
    int size = stepWidth(form) + levelsWidth(form) + gapWidth;
    if (count < 1
        || count > MOST_ROWS
        || ROWS + count * size != length
        || (Le.i32(body, PERIOD) == 0) != (gapWidth != 0)) {
      return false;
    }
    int gapAt = ROWS + size - gapWidth;
    return gapWidth == 0 || (gapWidth == 2 ? Le.u16(body, gapAt) == 0 : Le.i32(body, gapAt) == 0);
  }
}
