package tripline.link;

import java.util.Arrays;
import java.util.Locale;
import java.util.Random;

/**
 * Frames over a line that flips bits, and what became of each. Frames are due whose bytes arrived
 * unchanged, as did the delimiter before them.
 *
 * @param bitErrorRate share of bits flipped
 * @param frames sent
 * @param bytes sent
 * @param flipped bits flipped
 * @param hit frames with a flipped bit
 * @param due frames that had to be handed on
 * @param handedOn frames that were
 * @param wrong handed on though a bit was flipped, or not as they were sent
 * @param dropped due, and not handed on
 * @param unsynchronised most frames that arrived unchanged, one after another, and were not handed
 *     on after one that was hit
 * @param counters the decoder's
 */
record NoiseRun(
    double bitErrorRate,
    long frames,
    long bytes,
    long flipped,
    long hit,
    long due,
    long handedOn,
    long wrong,
    long dropped,
    long unsynchronised,
    LinkCounters counters) {

  /** Rows of a frame: a logger's usual block. */
  private static final int ROWS = 25;

  /** Compares what comes out with what went in, by sequence. */
  private static final class Comparison implements BodySink {
    private final int[] sentHash = new int[0x10000];
    private final boolean[] intact = new boolean[0x10000];
    private final boolean[] got = new boolean[0x10000];
    private final LinkDecoder decoder = new LinkDecoder(this);
    private long handedOn;
    private long wrong;

    @Override
    public void onBody(MessageType type, byte[] body, int length) {
      int sequence = BodySink.sequence(body);
      handedOn++;
      wrong += intact[sequence] && sentHash[sequence] == hash(body, length) ? 0 : 1;
      got[sequence] = true;
    }

    private static int hash(byte[] body, int length) {
      return Arrays.hashCode(Arrays.copyOf(body, length));
    }
  }

  /** Sends so many frames. */
  static NoiseRun of(double bitErrorRate, int frames, long seed) {
    Random random = new Random(Double.hashCode(bitErrorRate) + seed);
    RandomMessages messages = new RandomMessages(5 + seed);
    LinkEncoder encoder = new LinkEncoder();
    Comparison comparison = new Comparison();
    byte[] wire = new byte[LinkEncoder.MOST_BYTES];
    byte[] clean = new byte[LinkEncoder.MOST_BYTES];
    byte[] body = new byte[Layout.MOST_BODY + 4];
    double log = Math.log1p(-bitErrorRate);
    long toNextError = gap(random, log);
    long flipped = 0;
    long hit = 0;
    long due = 0;
    long dropped = 0;
    long unsynchronised = 0;
    long unheard = 0;
    long bits = 0;
    boolean delimited = true;
    for (int i = 0; i < frames; i++) {
      SampleBlock block = messages.typical(i, ROWS);
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
        flipped++;
      }
      bits += 8L * length;
      boolean same = Arrays.equals(wire, 0, length, clean, 0, length);
      comparison.intact[sequence] = same;
      comparison.got[sequence] = false;
      comparison.decoder.accept(wire, 0, length);
      boolean heard = comparison.got[sequence];
      hit += same ? 0 : 1;
      due += same && delimited ? 1 : 0;
      dropped += same && delimited && !heard ? 1 : 0;
      unheard = same && !heard ? unheard + 1 : 0;
      unsynchronised = Math.max(unsynchronised, unheard);
      delimited = wire[length - 1] == 0;
    }
    return new NoiseRun(
        bitErrorRate,
        frames,
        bits / 8,
        flipped,
        hit,
        due,
        comparison.handedOn,
        comparison.wrong,
        dropped,
        unsynchronised,
        comparison.decoder.counters());
  }

  private static long gap(Random random, double log) {
    return (long) (Math.log(1 - random.nextDouble()) / log);
  }

  /** In a line. */
  String words() {
    return String.format(
        Locale.ROOT,
        "%.0e: %d frames of %.0f bytes, %d bits flipped in %d; %d damaged units refused; handed on"
            + " %d of %d due, %d of them wrong, %d whole ones dropped; unchanged frames lost after"
            + " a hit: %d at most in a row",
        bitErrorRate,
        frames,
        (double) bytes / frames,
        flipped,
        hit,
        counters.damaged() + counters.malformed(),
        handedOn,
        due,
        wrong,
        dropped,
        unsynchronised);
  }
}
