package tripline.csv;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;

/** Bytes of a recording as text. */
final class Utf8 {
  /** Longest piece of a file that a message repeats, in characters. */
  private static final int MOST_SHOWN = 40;

  private Utf8() {}

  /** The text, or null if the bytes are not UTF-8. */
  static @Nullable String strict(byte[] bytes, int from, int to) {
    try {
      return StandardCharsets.UTF_8
          .newDecoder()
          .decode(ByteBuffer.wrap(bytes, from, to - from))
          .toString();
    } catch (CharacterCodingException notUtf8) {
      return null;
    }
  }

  /** A piece of the file in quotation marks, fit for one line of a message. */
  static String shown(byte[] bytes, int from, int to) {
    int end = Math.min(to, from + 4 * MOST_SHOWN);
    return shown(new String(bytes, from, end - from, StandardCharsets.UTF_8));
  }

  /** Text of the file in quotation marks, cut, with nothing in it that moves the cursor. */
  static String shown(String text) {
    StringBuilder out = new StringBuilder("'");
    int length = text.codePointCount(0, text.length());
    text.codePoints().limit(MOST_SHOWN).map(Utf8::harmless).forEach(out::appendCodePoint);
    return out.append(length > MOST_SHOWN ? "...'" : "'").toString();
  }

  /** Text with each control or direction-changing character replaced by a blank. */
  static String plain(String text) {
    StringBuilder out = new StringBuilder(text.length());
    text.codePoints().map(Utf8::harmless).forEach(out::appendCodePoint);
    return out.toString().strip();
  }

  private static int harmless(int c) {
    return switch (Character.getType(c)) {
      case Character.CONTROL,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR,
          Character.SURROGATE ->
          ' ';
      case Character.FORMAT -> c == 0x200C || c == 0x200D ? c : ' ';
      default -> c;
    };
  }

  /** How many characters begin among the bytes. */
  static int characters(byte[] bytes, int from, int to) {
    int n = 0;
    for (int i = from; i < to; i++) {
      if ((bytes[i] & 0xC0) != 0x80) {
        n++;
      }
    }
    return n;
  }
}
