package tripline.truth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** The motion against the formulas it claims to follow. */
class PathTest {
  @Test
  void driveFollowsHandwheelAsAPlayOperator() {
    Rng rng = new Rng(7);
    double lostMotion = 0.27;
    Path path = new Path(lostMotion, 3);
    double h = 3;
    double x = 3;
    for (int k = 1; k <= 20_000; k++) {
      double speed = StrictMath.sin(k / 700.0) * 1.3 + 0.4 * StrictMath.sin(k / 91.0);
      double next = h + speed * Path.STEP_S;
      path.append(next, speed);
      h = next;
      x = Math.min(Math.max(x, h - lostMotion), h);
      assertThat(path.driveAt(k * Path.STEP_S)).isCloseTo(x, within(1e-12));
    }
    double at = rng.uniform(0, 20);
    assertThat(path.handwheelAt(at) - path.driveAt(at)).isBetween(0.0, lostMotion);
  }

  @Test
  void driveStandsWhileTheHandwheelCrossesTheLostMotion() {
    Path path = new Path(0.3, 5);
    for (int k = 1; k <= 1000; k++) {
      path.append(5 + k * 0.0005, 0.5);
    }
    assertThat(path.driveAt(0.599)).isEqualTo(5);
    assertThat(path.driveAt(1.0)).isCloseTo(5.2, within(1e-9));
    assertThat(path.driveSpeedAt(0.3)).isZero();
    assertThat(path.driveSpeedAt(0.8)).isCloseTo(0.5, within(1e-9));
    assertThat(path.handwheelSpeedAt(0.3)).isCloseTo(0.5, within(1e-9));
  }

  @Test
  void crossingIsWhereTheCubicPassesThePosition() {
    Path path = new Path(0, 0);
    path.append(0.0005, 1.0);
    double crossing = path.crossingInLastSegment(0.0002);
    assertThat(path.handwheelAt(crossing)).isCloseTo(0.0002, within(1e-13));
  }
}
