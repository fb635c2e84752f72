package tripline.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.time.Duration;
import java.util.Random;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;

/** Whatever the bytes, the reader ends, and says at most one fault, in one line. */
class FuzzTest {
  @Test
  void damagedRecordingsGiveAFaultOrNone() {
    Assertions.assertTimeoutPreemptively(
        Duration.ofMinutes(2),
        () -> {
          int faults = 0;
          for (int seed = 0; seed < 3_000; seed++) {
            Random random = new Random(seed);
            RandomRecording recording = new RandomRecording(seed % 500);
            faults += harmless(recording, Mutation.of(recording.bytes(), random));
          }
          assertThat(faults).isBetween(1_000, 2_999);
        });
  }

  @Test
  void noiseGivesAFault() {
    for (int seed = 0; seed < 500; seed++) {
      Random random = new Random(seed);
      byte[] bytes = new byte[random.nextInt(2000)];
      random.nextBytes(bytes);
      assertThat(harmless(new RandomRecording(seed % 50), bytes)).isEqualTo(1);
    }
  }

  private static int harmless(RandomRecording recording, byte[] bytes) {
    Calls[] calls = new Calls[1];
    assertThatCode(() -> calls[0] = Calls.of(recording.layout, bytes, recording.channels))
        .doesNotThrowAnyException();
    calls[0].fault.ifPresent(
        fault -> {
          assertThat(fault.describe("f").codePoints()).noneMatch(Character::isISOControl);
          assertThat(fault.describe("f")).hasSizeLessThan(400);
          assertThat(fault.line()).isPositive();
          assertThat(fault.column()).isPositive();
          assertThat(fault.expected()).startsWith("expected ");
        });
    return calls[0].fault.isPresent() ? 1 : 0;
  }
}
