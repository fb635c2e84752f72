package tripline.harness.report.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class AxisTest {
  @ParameterizedTest
  @ValueSource(
      doubles = {0.0011, 0.02, 0.135, 0.151, 0.27, 0.34, 0.4, 0.5, 0.61, 0.76, 0.99, 1, 3.7, 12})
  void aSymmetricAxisEndsInTicksAtOrBeyondItsReach(double reach) {
    Axis axis = Axis.symmetric(reach, 6, 100, 0);
    List<Double> ticks = axis.ticks(6);
    assertThat(ticks).hasSizeBetween(5, 7);
    assertThat(Collections.max(ticks)).isCloseTo(axis.to(), within(1e-12));
    assertThat(Collections.min(ticks)).isCloseTo(-axis.to(), within(1e-12));
    assertThat(axis.to()).isGreaterThanOrEqualTo(reach * (1 - 1e-9)).isLessThan(1.4 * reach);
    assertThat(axis.at(0)).isCloseTo(50, within(1e-9));
  }
}
