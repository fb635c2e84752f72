package tripline.reduce;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import tripline.sample.SampleSink;
import tripline.truth.Rng;

/** What the reduction allocates: nothing per sample, a known sum at first, so much an event. */
class NoAllocationTest {
  private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

  private static long allocated() {
    return THREADS.getCurrentThreadAllocatedBytes();
  }

  /** The virtual machine itself may use some: less than a byte in sixteen samples. */
  private static final long SPARE_BYTES = 64 * 1024;

  @Test
  void aMillionMovingSamplesAllocateNothing() {
    Rng rng = new Rng(1);
    double[] noise = new double[1 << 12];
    for (int i = 0; i < noise.length; i++) {
      noise[i] = 0.001 * rng.gaussian();
    }
    Reduction reduction = new Reduction(Feed.settings(16, 0.0005, OptionalDouble.empty(), 1));
    InBlocks blocks = new InBlocks(reduction, new Rng(2));
    feed(reduction, noise, 0, 100_000);
    feed(blocks, noise, 100_000, 200_000);
    blocks.flush();
    long before = allocated();
    feed(reduction, noise, 200_000, 1_200_000);
    feed(blocks, noise, 1_200_000, 2_200_000);
    blocks.flush();
    assertThat(allocated() - before).isLessThan(SPARE_BYTES);
    Trace trace = reduction.finish();
    assertThat(trace.rows()).isEqualTo(2_200_000);
    assertThat(trace.movements()).hasSize(1).first().isInstanceOf(Movement.Move.class);
    assertThat(trace.losses()).isEmpty();
  }

  /** A millisecond a row with some jitter, half a turn a second, sixteen contacts that hold. */
  private static void feed(SampleSink sink, double[] noise, int from, int to) {
    for (int k = from; k < to; k++) {
      double reading = Math.rint((0.0005 * k + noise[k * 31 & noise.length - 1]) / 0.0005) * 0.0005;
      sink.onRow(k * 1_000_000L + (k * 7919 & 0xFFFF), reading, 0xFFFF, 0xA5A5);
    }
  }

  /** The figures of the package's description. */
  @Test
  void footprintIsAsStated() {
    new Reduction(Feed.settings(16, 0.001, OptionalDouble.empty(), 1)).finish();
    long before = allocated();
    Reduction reduction = new Reduction(Feed.settings(16, 0.001, OptionalDouble.empty(), 1));
    long fixed = allocated() - before;
    assertThat(fixed).isBetween(Footprint.FIXED_BYTES * 9 / 10, Footprint.FIXED_BYTES);

    before = allocated();
    int changes = 1000;
    long rows = 0;
    for (int k = 0; k < changes; k++) {
      for (int i = 0; i < 100; i++) {
        rows++;
        reduction.onRow(rows * 1_000_000, rows * 0.0005, 1, k & 1);
      }
    }
    long perEvent = (allocated() - before) / changes;
    assertThat(perEvent).isBetween(Footprint.EVENT_BYTES / 2, Footprint.EVENT_BYTES);
    assertThat(Footprint.FIXED_BYTES + SpotLog.MOST * Footprint.EVENT_BYTES)
        .as("the most that events can take")
        .isLessThan(32L << 20);
  }

  /** As package-info states them: 1.02 MB, and 7.5 kB an event. */
  private static final class Footprint {
    static final long FIXED_BYTES = 1_050_000;
    static final long EVENT_BYTES = 7_500;
  }
}
