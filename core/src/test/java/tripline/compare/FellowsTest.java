package tripline.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tripline.measure.Estimate;
import tripline.measure.Part;
import tripline.measure.Shape;

class FellowsTest {
  private static final Family FAMILY = new Family(10, true);
  private static final double OWN = 0.002;

  /** Movements that share a large error of the stop. */
  private static Map<String, Estimate> moves(double... by) {
    Map<String, Estimate> moves = new LinkedHashMap<>();
    for (int i = 0; i < by.length; i++) {
      moves.put(
          "c" + (i + 1),
          Estimate.of(
              by[i],
              Part.own("fit", OWN, Shape.NORMAL),
              Part.common("before stop:closed", -0.01, Shape.NORMAL),
              Part.common("after stop:closed", 0.01, Shape.NORMAL)));
    }
    return moves;
  }

  @Test
  void theStopCancelsBetweenCams() {
    Fellows fellows = Fellows.among(moves(0.021, 0.02, 0.019, 0.02), FAMILY);
    assertThat(fellows.stayed()).hasSize(4);
    // Mine less the mean of three others: u^2 = s^2 (1 + 1/3).
    assertThat(fellows.against("c1").orElseThrow().u())
        .isCloseTo(OWN * Math.sqrt(4 / 3.0), within(1e-12));
    assertThat(fellows.against("c1").orElseThrow().value()).isCloseTo(0.004 / 3, within(1e-12));
    assertThat(fellows.together().orElseThrow().u()).isGreaterThan(0.014);
    assertThat(fellows.together().orElseThrow().value()).isCloseTo(0.02, within(1e-12));
  }

  @Test
  void whoMovedIsPutAsideHoweverManyTheyPullAlong() {
    Fellows one = Fellows.among(moves(0.02, 0.02, -0.5, 0.02, 0.02), FAMILY);
    assertThat(one.stayed()).containsExactlyInAnyOrder("c1", "c2", "c4", "c5");
    assertThat(one.against("c3").orElseThrow().value()).isCloseTo(-0.52, within(1e-12));
    Fellows two = Fellows.among(moves(0, 0, 0.3, 0.31, 0), FAMILY);
    assertThat(two.stayed()).containsExactlyInAnyOrder("c1", "c2", "c5");
  }

  @Test
  void whereNoMajorityStayedNobodyIsNamed() {
    Fellows fellows = Fellows.among(moves(0, 0, 0.3, 0.3), FAMILY);
    assertThat(fellows.stayed()).isEmpty();
    assertThat(fellows.scattered()).isTrue();
    assertThat(fellows.against("c1")).isEmpty();
    assertThat(fellows.together()).isEmpty();
  }

  @Test
  void twoCamsCannotTellWhichOfThemMoved() {
    Fellows fellows = Fellows.among(moves(0, 0.3), FAMILY);
    assertThat(fellows.against("c1")).isEmpty();
    assertThat(fellows.scattered()).isFalse();
    assertThat(Fellows.figures(moves(0, 0.3))).isZero();
    assertThat(Fellows.figures(moves(0, 0.3, 0))).isEqualTo(3);
    assertThat(Fellows.among(Map.of(), FAMILY).against("c1")).isEmpty();
  }
}
