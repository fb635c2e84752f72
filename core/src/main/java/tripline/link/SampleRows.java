package tripline.link;

/** Reads the parts of a row of {@code samples} (SPEC §5, 04). */
final class SampleRows {
  private SampleRows() {}

  static int step(byte[] body, int at, int width) {
    return switch (width) {
      case 1 -> body[at];
      case 2 -> Le.i16(body, at);
      case 4 -> Le.i32(body, at);
      default -> 0;
    };
  }

  /** Whether a step of this width is one, and not the sign for "no reading". */
  static boolean isReading(int step, int width) {
    return width != 0 && step != Integer.MIN_VALUE >> (32 - 8 * width);
  }

  /** Levels of a row: those of the header where the row does not reach. */
  static long levels(byte[] body, int at, int width, long header) {
    return switch (width) {
      case 1 -> (header & ~0xffL) | Le.u8(body, at);
      case 2 -> (header & ~0xffffL) | Le.u16(body, at);
      case 4 -> (header & ~0xffff_ffffL) | Le.u32(body, at);
      case 8 -> Le.i64(body, at);
      default -> header;
    };
  }

  static long gap(byte[] body, int at, int width) {
    return width == 2 ? Le.u16(body, at) : width == 4 ? Le.u32(body, at) : 0;
  }
}
