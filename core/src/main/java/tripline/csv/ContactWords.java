package tripline.csv;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** Which cell texts mean closed, which open: compared as bytes, letters in either case. */
final class ContactWords {
  static final int OPEN = 0;
  static final int CLOSED = 1;
  static final int NEITHER = -1;

  private final byte[] single = new byte[256];
  private final byte[][] closed;
  private final byte[][] open;
  private final String expected;

  ContactWords(CsvLayout layout) {
    closed = spellings(layout.closed());
    open = spellings(layout.open());
    expected =
        "expected "
            + String.join(", ", layout.closed())
            + " for closed or "
            + String.join(", ", layout.open())
            + " for open";
    Arrays.fill(single, (byte) NEITHER);
    enter(closed, CLOSED);
    enter(open, OPEN);
  }

  /** What would have been understood. */
  String expected() {
    return expected;
  }

  /** State by the only byte of a cell: {@link #OPEN}, {@link #CLOSED} or {@link #NEITHER}. */
  int state(byte only) {
    return single[only & 0xFF];
  }

  /** State by the bytes of a cell. */
  int state(byte[] bytes, int from, int to) {
    if (to - from == 1) {
      return state(bytes[from]);
    }
    return holds(closed, bytes, from, to) ? CLOSED : holds(open, bytes, from, to) ? OPEN : NEITHER;
  }

  private void enter(byte[][] words, int state) {
    for (byte[] word : words) {
      if (word.length == 1) {
        single[word[0] & 0xFF] = (byte) state;
      }
    }
  }

  private static boolean holds(byte[][] words, byte[] bytes, int from, int to) {
    for (byte[] word : words) {
      if (word.length == to - from && same(word, bytes, from)) {
        return true;
      }
    }
    return false;
  }

  private static boolean same(byte[] word, byte[] bytes, int from) {
    for (int i = 0; i < word.length; i++) {
      if (lower(bytes[from + i]) != lower(word[i])) {
        return false;
      }
    }
    return true;
  }

  private static int lower(byte b) {
    return b >= 'A' && b <= 'Z' ? b + ('a' - 'A') : b;
  }

  private static byte[][] spellings(List<String> words) {
    Set<String> spellings = new LinkedHashSet<>();
    for (String word : words) {
      String plain = word.strip();
      spellings.add(plain);
      spellings.add(plain.toLowerCase(Locale.ROOT));
      spellings.add(plain.toUpperCase(Locale.ROOT));
    }
    List<byte[]> bytes = new ArrayList<>();
    for (String spelling : spellings) {
      bytes.add(spelling.getBytes(StandardCharsets.UTF_8));
    }
    return bytes.toArray(byte[][]::new);
  }
}
