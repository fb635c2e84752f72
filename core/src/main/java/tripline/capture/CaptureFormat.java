package tripline.capture;

/** Where the fields of a capture lie (CAPTURE.md §2, §3); offsets are from the start of a body. */
public final class CaptureFormat {
  /** Version written, and the highest major that is read. */
  public static final int MAJOR = 1;

  public static final int MINOR = 0;

  /** Most bytes of one {@code received} record. */
  public static final int MOST_DATA = 8192;

  static final int TYPE = 0;
  static final int FORM = 1;
  static final int NUMBER = 2;
  static final int ELAPSED = 4;
  static final int HEADER = 12;

  static final int BEGIN = 0x01;
  static final int BEGIN_MAJOR = 12;
  static final int BEGIN_MINOR = 13;
  static final int BEGIN_DRIVE = 14;
  static final int BEGIN_ZERO = 15;
  static final int BEGIN_UTC = 16;
  static final int BEGIN_JOB = 24;
  static final int BEGIN_JOB_BYTES = 32;
  static final int BEGIN_STRINGS = 56;

  static final int RECEIVED = 0x02;
  static final int RECEIVED_OFFSET = 12;
  static final int RECEIVED_DATA = 16;

  static final int LINE = 0x03;
  static final int LINE_EVENT = 12;
  static final int LINE_CAUSE = 13;
  static final int LINE_UTC = 16;
  static final int LINE_STRINGS = 24;

  static final int MARK = 0x04;
  static final int MARK_KIND = 12;
  static final int MARK_TAKEN = 13;
  static final int MARK_STRINGS = 14;

  static final int END = 0x05;
  static final int END_REASON = 12;
  static final int END_RECEIVED = 16;
  static final int END_BYTES = 24;

  static final int CHECK = 4;
  static final int MOST_BODY = RECEIVED_DATA + MOST_DATA;

  /** Longest unit without its delimiter: body and check, stuffed. */
  static final int MOST_UNIT = MOST_BODY + CHECK + (MOST_BODY + CHECK) / 254 + 1;

  private static final byte[] LEAD = {(byte) 0x9d, 'T', 'L', 'C', 'A', 'P', '\n', 0};

  /** Bytes of the lead. */
  public static final int LEAD_BYTES = 8;

  private CaptureFormat() {}

  /** A copy of the bytes that every capture begins with; no text does. */
  public static byte[] lead() {
    return LEAD.clone();
  }

  /** Whether a file that begins with these bytes is a capture: the first byte tells. */
  public static boolean isCapture(byte[] bytes, int length) {
    return length > 0 && bytes[0] == LEAD[0];
  }

  static byte lead(int at) {
    return LEAD[at];
  }
}
