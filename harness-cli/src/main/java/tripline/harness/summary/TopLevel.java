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
    void onMember(String key, int from, int to) throws MalformedJson;
  }

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
   * @throws MalformedJson where the brackets, strings and commas of the object do not fit together
   */
  static void split(byte[] bytes, int length, MemberSink sink) throws MalformedJson {
    TopLevel json = new TopLevel(bytes, length);
    if (json.blank() == '{') {
      json.members(sink);
      json.at++;
      if (json.blank() != 0) {
        throw json.malformed();
      }
    } else if (json.at == length) {
      throw json.malformed();
    }
  }

  private void members(MemberSink sink) throws MalformedJson {
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

  private void value() throws MalformedJson {
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

  private void nested() throws MalformedJson {
    int depth = 0;
    while (at < length) {
      switch (bytes[at]) {
        case '"' -> string();
        case '{', '[' -> {
          depth++;
          at++;
        }
        case '}', ']' -> {
          depth--;
          at++;
          if (depth == 0) {
            return;
          }
        }
        default -> at++;
      }
    }
    throw malformed();
  }

  /** From an opening quote to behind the closing one. */
  private void string() throws MalformedJson {
    for (at++; at < length; at++) {
      byte c = bytes[at];
      if (c == '"') {
        at++;
        return;
      }
      if (c == '\\') {
        at++;
      }
    }
    at = length;
    throw malformed();
  }

  private MalformedJson malformed() {
    return new MalformedJson(Math.min(at, length));
  }
}
