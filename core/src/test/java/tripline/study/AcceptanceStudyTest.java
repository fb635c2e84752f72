package tripline.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * A few cells of {@link AcceptanceStudy} with fixed seeds: intervals hold the stated share of
 * future trips at least as often as stated, less three standard deviations of what so few can tell,
 * and a cam on the very edge is accepted no more often than one in twenty.
 */
class AcceptanceStudyTest {
  private static final int RUNS = 15;

  static Stream<AcceptanceCell> cells() {
    return Stream.of(
        // Scatter large against the stop: the factor has to keep the confidence.
        new AcceptanceCell(AcceptanceCell.Drives.MOTOR, 3, 0.03, 0.005, 0.95, 0.95),
        // The stop, one error for all strokes, large against the scatter.
        new AcceptanceCell(AcceptanceCell.Drives.MOTOR, 5, 0.002, 0.02, 0.95, 0.95),
        // By hand, every stroke feels the stop; turns back to change grip.
        new AcceptanceCell(AcceptanceCell.Drives.HAND, 3, 0.01, 0.01, 0.95, 0.95));
  }

  @ParameterizedTest
  @MethodSource("cells")
  void intervalsKeepTheirWord(AcceptanceCell cell) {
    AcceptanceScore score = AcceptanceStudy.of(cell, RUNS);
    assertThat(score.without).as("intervals missing").isZero();
    assertThat(score.intervals).isEqualTo(3 * RUNS);
    double deviation = Math.sqrt(0.05 * 0.95 / score.intervals);
    assertThat(score.confidence()).isGreaterThanOrEqualTo(0.95 - 3 * deviation);
    double edge = Math.sqrt(0.05 * 0.95 / score.onTheEdge);
    assertThat(score.falselyAccepted()).isLessThanOrEqualTo(0.05 + 3 * edge);
  }
}
