package tripline.link;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.concurrent.CompletableFuture;

/**
 * Random messages through both codecs: written here, read and written anew in C. Both its frame and
 * its line must be the ones written here, to the last bit, whichever of them was sent.
 */
final class CodecAgreement {
  /** Messages the C decoder gets in one stream. */
  static final int BATCH = 500;

  private CodecAgreement() {}

  /**
   * Sends so many.
   *
   * @return bytes compared
   * @throws IllegalStateException at the first that differs
   */
  static long over(SecondCodec codec, Encoding encoding, int count, long seed) throws Exception {
    CompletableFuture<Void> sending =
        CompletableFuture.runAsync(() -> send(codec, encoding, count / BATCH, seed));
    RandomMessages random = new RandomMessages(seed);
    byte[] frame = new byte[LinkEncoder.MOST_BYTES];
    byte[] line = new byte[LinkEncoder.MOST_BYTES];
    LinkEncoder encoder = new LinkEncoder();
    long bytes = 0;
    for (int i = 0; i < count / BATCH * BATCH; i++) {
      LinkMessage sent = random.next();
      int sequence = i % BATCH;
      int frameLength = encoder.encode(sent, sequence, Encoding.FRAMES, frame, 0);
      int lineLength = encoder.encode(sent, sequence, Encoding.LINES, line, 0);
      SecondCodec.Message got = codec.next();
      boolean same =
          got != null
              && Arrays.equals(frame, 0, frameLength, got.frame(), 0, got.frame().length)
              && Arrays.equals(line, 0, lineLength, got.line(), 0, got.line().length);
      if (!same) {
        throw new IllegalStateException("message %d of %s: %s".formatted(i, encoding, sent));
      }
      bytes += frameLength + lineLength;
      if (sequence == BATCH - 1 && (codec.next() != null || codec.counters().messages() != BATCH)) {
        throw new IllegalStateException("not %d messages up to %d".formatted(BATCH, i));
      }
    }
    sending.get();
    return bytes;
  }

  private static void send(SecondCodec codec, Encoding encoding, int batches, long seed) {
    RandomMessages random = new RandomMessages(seed);
    LinkEncoder encoder = new LinkEncoder();
    byte[] stream = new byte[BATCH * LinkEncoder.MOST_BYTES];
    try {
      for (int b = 0; b < batches; b++) {
        int length = 0;
        for (int i = 0; i < BATCH; i++) {
          length += encoder.encode(random.next(), i, encoding, stream, length);
        }
        codec.send(stream, length, 1000);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
