package tripline.harness.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** A few edges through everything; the study of the same name measures many. */
class WatchLatencyTest {
  @Test
  void anEdgeIsSoonOnTheScreen() throws Exception {
    double[] ms = WatchLatency.measure(Path.of(System.getProperty("tripline.root")), 1);
    assertThat(ms).hasSizeGreaterThanOrEqualTo(4);
    // Generous: whatever else the machine does meanwhile.
    assertThat(ms[ms.length / 2]).as("median of %d, ms", ms.length).isLessThan(1000);
  }
}
