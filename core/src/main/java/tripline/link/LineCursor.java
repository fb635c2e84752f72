package tripline.link;

/** Reads values of a line, one after another (SPEC §7). Refuses by {@link #UNREADABLE}. */
final class LineCursor {
  /** What no value is: none reaches beyond 2^53 but masks, which are read apart. */
  static final long UNREADABLE = Long.MIN_VALUE;

  private static final int MOST_DIGITS = 16;

  private byte[] line = new byte[0];
  private int at;
  private int end;

  void begin(byte[] text, int from, int to) {
    line = text;
    at = from;
    end = to;
  }

  int at() {
    return at;
  }

  /** At the end of the line, or before a space. */
  boolean atEndOfToken() {
    return at == end || line[at] == ' ';
  }

  int peek() {
    return at < end ? line[at] & 0xff : -1;
  }

  /** Passes one character if it is next. */
  boolean pass(char c) {
    if (at < end && line[at] == c) {
      at++;
      return true;
    }
    return false;
  }

  /** Passes a space, the key and {@code =} if they are next. */
  boolean passKey(String key) {
    int equals = at + 1 + key.length();
    if (equals >= end
        || line[at] != ' '
        || line[equals] != '='
        || !Ascii.equal(line, at + 1, equals, key)) {
      return false;
    }
    at = equals + 1;
    return true;
  }

  /** 1 to 16 decimal digits. */
  long decimal() {
    int from = at;
    long value = 0;
    while (at < end && line[at] >= '0' && line[at] <= '9' && at - from <= MOST_DIGITS) {
      value = value * 10 + line[at++] - '0';
    }
    return at == from || at - from > MOST_DIGITS ? UNREADABLE : value;
  }

  /** A decimal that may have a minus sign. */
  long signed() {
    boolean negative = pass('-');
    long value = decimal();
    return value == UNREADABLE || !negative ? value : -value;
  }

  /** Digits of a following hexadecimal number, 0 if there is none or it is too long. */
  int hexDigits() {
    int to = at;
    while (to < end && Ascii.hexDigit(line[to]) >= 0) {
      to++;
    }
    return to - at > MOST_DIGITS ? 0 : to - at;
  }

  /** The hexadecimal number of so many digits. */
  long hex(int digits) {
    long value = 0;
    for (int i = 0; i < digits; i++) {
      value = (value << 4) | Ascii.hexDigit(line[at++]);
    }
    return value;
  }

  /** A word of the field, or a number of at most 255. */
  long word(Field field) {
    if (at < end && line[at] >= '0' && line[at] <= '9') {
      return decimal();
    }
    int from = at;
    while (at < end && line[at] != ' ') {
      at++;
    }
    for (int i = 0; i < field.words().size(); i++) {
      if (Ascii.equal(line, from, at, field.words().get(i).word())) {
        return field.words().get(i).code();
      }
    }
    return UNREADABLE;
  }

  /**
   * A string in quotation marks into {@code body} at {@code to}.
   *
   * @return its length, or -1 if it is unreadable or longer than {@code most}
   */
  int string(byte[] body, int to, int most) {
    if (!pass('"')) {
      return -1;
    }
    int length = 0;
    while (at < end && line[at] != '"') {
      if (line[at] == '\\') {
        at++;
        if (at == end || (line[at] != '"' && line[at] != '\\')) {
          return -1;
        }
      }
      if (length == most) {
        return -1;
      }
      body[to + length++] = line[at++];
    }
    return pass('"') ? length : -1;
  }

  /** Pairs of hexadecimal digits; their number, or -1. */
  int data(byte[] body, int to, int most) {
    int length = 0;
    while (at < end && line[at] != ' ') {
      int high = Ascii.hexDigit(line[at]);
      int low = at + 1 < end ? Ascii.hexDigit(line[at + 1]) : -1;
      if (high < 0 || low < 0 || length == most) {
        return -1;
      }
      body[to + length++] = (byte) ((high << 4) | low);
      at += 2;
    }
    return length;
  }
}
