package tripline.harness.summary;

import java.nio.charset.StandardCharsets;

/**
 * The members of a JSON object as stretches of its bytes. Nearly all of a result file is strokes
 * and changes that a summary has no use for: they are passed over bracket by bracket, ten times as
 * fast as they could be parsed.
 */
final class TopLevel {
  /** Told of every member. */
  interface MemberSink {
    /** The value of a member lies at {@code from} inclusive to {@code to} exclusive. */
    void onMember(String key, int from, int to) throws UnusableResult;
  }

  /** First characters of the values that are no object (RFC 8259 3). */
  private static final String VALUE_BEGINS = "[\"-0123456789tfn";

  private final byte[] bytes;
  private final int length;
  private int at;

  private TopLevel(byte[] bytes, int length) {
    this.bytes = bytes;
    this.length = length;
  }

  /**
   * Splits an object; anything else has no members.
   *
   * @throws UnusableResult where the brackets, strings and commas of the object do not fit together
   */
  static void split(byte[] bytes, int length, MemberSink sink) throws UnusableResult {
    TopLevel json = new TopLevel(bytes, length);
    json.skipByteOrderMark();
    if (json.blank() == '{') {
      json.members(sink);
      json.at++;
      if (json.blank() != 0) {
        throw json.malformed();
      }
    } else if (json.at == length || VALUE_BEGINS.indexOf(json.blank()) < 0) {
      throw json.malformed();
    }
  }

  /** UTF-8's, as some editors and shells put it; any other encoding is no JSON (RFC 8259 8.1). */
  private void skipByteOrderMark() {
    boolean marked =
        length >= 3
            && bytes[0] == (byte) 0xEF
            && bytes[1] == (byte) 0xBB
            && bytes[2] == (byte) 0xBF;
    at = marked ? 3 : 0;
  }

  private void members(MemberSink sink) throws UnusableResult {
    at++;
    if (blank() == '}') {
      return;
    }
    while (true) {
      if (blank() != '"') {
        throw malformed();
      }
      int key = at + 1;
      string();
      String name = new String(bytes, key, at - 1 - key, StandardCharsets.UTF_8);
      if (blank() != ':') {
        throw malformed();
      }
      at++;
      blank();
      int from = at;
      value();
      sink.onMember(name, from, at);
      int next = blank();
      if (next == '}') {
        return;
      }
      if (next != ',') {
        throw malformed();
      }
      at++;
    }
  }

  /** Steps to the next byte that is no white space; 0 at the end. */
  private int blank() {
    while (at < length && bytes[at] <= ' ' && bytes[at] >= 0) {
      at++;
    }
    return at < length ? bytes[at] : 0;
  }

  private void value() throws UnusableResult {
    int first = at < length ? bytes[at] : 0;
    if (first == '"') {
      string();
    } else if (first == '{' || first == '[') {
      nested();
    } else {
      int from = at;
      while (at < length && "-+.0123456789abcdefghijklmnopqrstuvwxyzE".indexOf(bytes[at]) >= 0) {
        at++;
      }
      if (at == from) {
        throw malformed();
      }
    }
  }

  /** Nearly every byte of a file passes here: local variables, and one look at most of them. */
  private void nested() throws UnusableResult {
    byte[] text = bytes;
    int end = length;
    int depth = 0;
    int i = at;
    while (i < end) {
      byte c = text[i++];
      if (c == '"') {
        i = behindString(i);
      } else if (c > 'Z') {
        if (c == '{' || c == '[') {
          depth++;
        } else if (c == '}' || c == ']') {
          depth--;
          if (depth == 0) {
            at = i;
            return;
          }
        }
      }
    }
    at = end;
    throw malformed();
  }

  /** From an opening quote to behind the closing one. */
  private void string() throws UnusableResult {
    at = behindString(at + 1);
  }

  private int behindString(int from) throws UnusableResult {
    byte[] text = bytes;
    int end = length;
    for (int i = from; i < end; i++) {
      byte c = text[i];
      if (c == '"') {
        return i + 1;
      }
      if (c == '\\') {
        i++;
      }
    }
    at = end;
    throw malformed();
  }

  private UnusableResult malformed() {
    return new UnusableResult(Math.min(at, length));
  }
}
