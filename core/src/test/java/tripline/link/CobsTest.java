package tripline.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.HexFormat;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Published pairs: cobs-python (MIT), src/cobs/cobs/test.py; Cheshire and Baker 1999 (from memory).
 */
class CobsTest {
  private static byte[] encode(byte[] data) {
    byte[] out = new byte[Cobs.longest(data.length)];
    return Arrays.copyOf(out, Cobs.encode(data, data.length, out, 0));
  }

  private static byte[] decode(byte[] wire) {
    byte[] out = new byte[wire.length];
    int length = Cobs.decode(wire, 0, wire.length, out);
    return length < 0 ? new byte[] {-1, -1, -1} : Arrays.copyOf(out, length);
  }

  private static byte[] range(int from, int to) {
    byte[] all = new byte[to - from + 1];
    for (int i = 0; i < all.length; i++) {
      all[i] = (byte) (from + i);
    }
    return all;
  }

  @ParameterizedTest
  @CsvSource({
    "'', 01",
    "31, 0231",
    "3132333435, 063132333435",
    "31323334350036373839, 0631323334350536373839",
    "0031323334350036373839, 010631323334350536373839",
    "3132333435003637383900, 063132333435053637383901",
    "00, 0101",
    "0000, 010101",
    "4500002c4c79000040064f37, 024501042c4c79010540064f37",
    "001100, 01021101",
    "11220033, 0311220233",
    "11223344, 0511223344",
    "11000000, 0211010101",
  })
  void publishedPairs(String data, String wire) {
    byte[] raw = HexFormat.of().parseHex(data);
    byte[] stuffed = HexFormat.of().parseHex(wire);
    assertThat(encode(raw)).isEqualTo(stuffed);
    assertThat(decode(stuffed)).isEqualTo(raw);
  }

  @Test
  void longRunsAsPublished() {
    assertThat(encode(range(1, 253))).startsWith(0xfe).hasSize(254);
    assertThat(encode(range(1, 254))).startsWith(0xff).hasSize(255);
    byte[] of255 = encode(range(1, 255));
    assertThat(of255).hasSize(257).startsWith(0xff).endsWith(0x02, 0xff);
    byte[] of256 = encode(range(0, 255));
    assertThat(of256).hasSize(258).startsWith(0x01, 0xff).endsWith(0x02, 0xff);
  }

  @Test
  void bothSpellingsOfATrailingFullPieceAreRead() {
    byte[] data = range(1, 254);
    byte[] withOne = Arrays.copyOf(encode(data), 256);
    withOne[255] = 1;
    assertThat(decode(withOne)).isEqualTo(data);
  }

  @ParameterizedTest
  @CsvSource({"05313233", "0531", "ff01", "0231ff"})
  void codesBeyondTheEndAreRefused(String wire) {
    byte[] stuffed = HexFormat.of().parseHex(wire);
    assertThat(Cobs.decode(stuffed, 0, stuffed.length, new byte[300])).isEqualTo(-1);
  }

  @Test
  void whatIsStuffedComesBackAndHoldsNoZero() {
    Random random = new Random(41);
    for (int round = 0; round < 20_000; round++) {
      byte[] data = new byte[random.nextInt(517)];
      random.nextBytes(data);
      int zeros = random.nextInt(1 + data.length);
      for (int i = 0; i < data.length; i++) {
        data[i] = random.nextInt(1 + data.length) < zeros || data[i] != 0 ? data[i] : 1;
      }
      byte[] wire = encode(data);
      assertThat(Bytes.indexOfZero(wire, 0, wire.length)).isEqualTo(-1);
      assertThat(decode(wire)).isEqualTo(data);
    }
  }

  @Test
  void theFirstZeroIsFoundWhereverItLies() {
    for (int length = 0; length < 40; length++) {
      byte[] bytes = new byte[length + 3];
      Arrays.fill(bytes, (byte) 0x80);
      for (int zero = 0; zero < length; zero++) {
        bytes[zero] = 0;
        assertThat(Bytes.indexOfZero(bytes, 0, length)).isEqualTo(zero);
        assertThat(Bytes.indexOfZero(bytes, 0, zero)).isEqualTo(-1);
        bytes[zero] = 1;
      }
    }
  }
}
