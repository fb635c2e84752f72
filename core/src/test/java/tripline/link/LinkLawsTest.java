package tripline.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What must hold for every message and every stream, from seeded generators. */
class LinkLawsTest {
  private static final int ROUNDS = 4_000;

  @ParameterizedTest
  @EnumSource(Encoding.class)
  void whatIsEncodedIsDecodedAndEncodedAgainToTheSameBytes(Encoding encoding) {
    RandomMessages random = new RandomMessages(7);
    byte[] out = new byte[LinkEncoder.MOST_BYTES];
    for (int i = 0; i < ROUNDS; i++) {
      LinkMessage message = random.next();
      int sequence = i & 0xffff;
      int length = new LinkEncoder().encode(message, sequence, encoding, out, 0);
      Received received = new Received();
      received.decoder.accept(out, 0, length);
      assertThat(received.messages).hasSize(1);
      if (!(message instanceof SampleBlock || message instanceof EdgeBlock)) {
        assertThat(received.messages.get(0)).isEqualTo(message);
      }
      for (Encoding either : Encoding.values()) {
        assertThat(VectorTest.encoded(received.messages.get(0), sequence, either))
            .isEqualTo(VectorTest.encoded(message, sequence, either));
      }
    }
  }

  @Test
  void theCuttingOfAStreamChangesNothing() {
    for (int seed = 0; seed < 120; seed++) {
      byte[] stream = noisyStream(seed);
      Received whole = new Received().feed(stream);
      Random random = new Random(seed);
      Received cut = new Received();
      for (int at = 0; at < stream.length; ) {
        int most = seed % 3 == 0 ? 1 : seed % 3 == 1 ? 30 : 2000;
        int length = Math.min(1 + random.nextInt(most), stream.length - at);
        cut.decoder.accept(stream, at, length);
        at += length;
      }
      assertThat(cut.decoder.counters()).as("seed " + seed).isEqualTo(whole.decoder.counters());
      assertThat(cut.trees).isEqualTo(whole.trees);
    }
  }

  @Test
  void everyByteIsAccountedForAndNothingIsThrown() {
    for (int seed = 1000; seed < 1120; seed++) {
      byte[] stream = noisyStream(seed);
      Received received = new Received();
      long pendingMost = 0;
      for (int at = 0; at < stream.length; at += 97) {
        received.decoder.accept(stream, at, Math.min(97, stream.length - at));
        pendingMost = Math.max(pendingMost, received.decoder.counters().pending());
        assertThat(received.decoder.counters().pending()).isNotNegative();
      }
      received.decoder.finish();
      LinkCounters counters = received.decoder.counters();
      assertThat(counters.pending()).isZero();
      assertThat(counters.bytes()).isEqualTo(stream.length);
      assertThat(counters.messages()).isEqualTo(received.messages.size());
      assertThat(pendingMost).isPositive();
    }
  }

  /** Frames and lines, changes of encoding, flipped bits, lost and doubled bytes, noise. */
  static byte[] noisyStream(long seed) {
    Random random = new Random(seed);
    RandomMessages messages = new RandomMessages(seed);
    LinkEncoder encoder = new LinkEncoder();
    ByteArrayOutputStream stream = new ByteArrayOutputStream();
    byte[] out = new byte[LinkEncoder.MOST_BYTES];
    Encoding encoding = Encoding.FRAMES;
    for (int i = 0; i < 60; i++) {
      encoding =
          random.nextInt(24) > 1
              ? encoding
              : random.nextBoolean() ? Encoding.FRAMES : Encoding.LINES;
      int length = encoder.encode(messages.next(), encoding, out, 0);
      switch (random.nextInt(16)) {
        case 0 -> out[random.nextInt(length)] ^= (byte) (1 << random.nextInt(8));
        case 1 -> length = random.nextInt(length + 1);
        case 2 -> stream.write(out, 0, length);
        case 3 -> encoder.skip();
        case 4 -> stream.write(out, 0, random.nextInt(length + 1));
        case 5 -> {
          byte[] noise = new byte[random.nextInt(random.nextInt(9) == 0 ? 9000 : 50)];
          random.nextBytes(noise);
          stream.write(noise, 0, noise.length);
        }
        case 6 -> stream.write(random.nextInt(3) == 0 ? '\n' : 0);
        case 7 -> stream.write(random.nextBoolean() ? '\r' : '\n');
        default -> {}
      }
      stream.write(out, 0, length);
    }
    return stream.toByteArray();
  }
}
