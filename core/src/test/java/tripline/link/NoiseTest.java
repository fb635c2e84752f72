package tripline.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Bit errors on the line (issue of the link: 1e-6 to 1e-3). A frame whose bytes and whose delimiter
 * before it arrived unchanged must be handed on; anything handed on must be what was sent; the
 * first frame after any damage must be found. Frames to try: system property {@code
 * tripline.noise.frames}, 40,000 a rate unless set; {@code -Dtripline.noise.frames=1000000} is the
 * long run.
 */
class NoiseTest {
  private static final int FRAMES = Integer.getInteger("tripline.noise.frames", 40_000);

  /** Compares what comes out with what went in, frame by frame, by sequence. */
  private static final class Comparison implements BodySink {
    private final int[] sentHash = new int[0x10000];
    private final long[] sentAt = new long[0x10000];
    private final boolean[] intact = new boolean[0x10000];
    private final LinkDecoder decoder = new LinkDecoder(this);
    private long handedOn;
    private long wrong;

    @Override
    public void onBody(MessageType type, byte[] body, int length) {
      int sequence = BodySink.sequence(body);
      handedOn++;
      if (!intact[sequence] || sentHash[sequence] != hash(body, length)) {
        wrong++;
      }
      sentAt[sequence] = -1;
    }

    private static int hash(byte[] body, int length) {
      return Arrays.hashCode(Arrays.copyOf(body, length));
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {1e-6, 1e-5, 1e-4, 3e-4, 1e-3})
  void nothingDamagedIsHandedOnAndNothingWholeIsDropped(double bitErrorRate) {
    Random random = new Random(Double.hashCode(bitErrorRate));
    RandomMessages messages = new RandomMessages(5);
    LinkEncoder encoder = new LinkEncoder();
    Comparison comparison = new Comparison();
    byte[] wire = new byte[LinkEncoder.MOST_BYTES];
    byte[] clean = new byte[LinkEncoder.MOST_BYTES];
    byte[] body = new byte[Layout.MOST_BODY + 4];
    double log = Math.log1p(-bitErrorRate);
    long toNextError = gap(random, log);
    long whole = 0;
    long bits = 0;
    boolean delimited = true;
    for (int i = 0; i < FRAMES; i++) {
      SampleBlock block = messages.typical(i, 25);
      int sequence = encoder.nextSequence();
      int length = encoder.encode(block, Encoding.FRAMES, wire, 0);
      System.arraycopy(wire, 0, clean, 0, length);
      int bodyLength = block.writeBody(body);
      Le.put16(body, Layout.SEQUENCE, sequence);
      comparison.sentHash[sequence] = Comparison.hash(body, bodyLength);
      while (toNextError < bits + 8L * length) {
        int bit = (int) (toNextError - bits);
        wire[bit >> 3] ^= (byte) (1 << (bit & 7));
        toNextError += 1 + gap(random, log);
      }
      bits += 8L * length;
      boolean same = Arrays.equals(wire, 0, length, clean, 0, length);
      comparison.intact[sequence] = same;
      comparison.sentAt[sequence] = i;
      comparison.decoder.accept(wire, 0, length);
      boolean due = same && delimited;
      whole += due ? 1 : 0;
      boolean handedOn = comparison.sentAt[sequence] == -1;
      assertThat(handedOn).as("frame %d", i).isEqualTo(due);
      delimited = wire[length - 1] == 0;
    }
    LinkCounters counters = comparison.decoder.counters();
    assertThat(comparison.wrong).isZero();
    assertThat(comparison.handedOn).isEqualTo(whole);
    assertThat(counters.messages()).isEqualTo(whole);
    assertThat(counters.malformed() + counters.unknown() + counters.repeated()).isZero();
    assertThat(counters.bytes())
        .isEqualTo(
            counters.delivered() + counters.skipped() + counters.idle() + counters.pending());
    assertThat(counters.lost()).isBetween(FRAMES - whole - 64, FRAMES - whole);
    if (FRAMES * bitErrorRate > 1) {
      assertThat(counters.damaged()).isPositive();
    }
  }

  private static long gap(Random random, double log) {
    return (long) (Math.log(1 - random.nextDouble()) / log);
  }
}
