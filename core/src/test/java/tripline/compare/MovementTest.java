package tripline.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tripline.compare.Sketch.figure;
import static tripline.compare.Sketch.part;

import java.util.List;
import org.junit.jupiter.api.Test;
import tripline.measure.Estimate;
import tripline.result.Result.Measured;
import tripline.result.Result.PartResult;

/** Which errors cancel in a difference, and what is left. */
class MovementTest {
  private static final double Q = 0.04;

  private static Estimate moved(Sketch before, Sketch after) {
    return Sketch.moved(Comparison.of(before.account(), after.account()), 1).orElseThrow();
  }

  @Test
  void twoReadingsOfOneStepHaveTheTriangleOfTheirDifference() {
    // JCGM 100:2008 4.3.9: of two readings rounded to q the difference has u = q / sqrt 6; 95 % of
    // the triangle lie within 1.901767 u (exact; two equal rectangles).
    double u = Q / Math.sqrt(12);
    Measured reading =
        new Measured(3, u, 1.645448 * u, List.of(new PartResult("bracket", u, "rectangular")));
    Estimate by = moved(new Sketch("a").cam(reading), new Sketch("b").cam(reading));
    assertThat(by.u()).isCloseTo(Q / Math.sqrt(6), within(1e-12));
    assertThat(by.expanded95()).isCloseTo(1.901767 * by.u(), within(1e-6));
  }

  @Test
  void aPartThatIsTheSumOfSeveralRectanglesIsNotTakenForOne() {
    // Four equal rectangles: 1.939703 u (JCGM 101:2008 9.2.3: 3.88 for u = 2).
    Measured pooled =
        new Measured(
            3, 0.01, 1.939703 * 0.01, List.of(new PartResult("bracket", 0.01, "rectangular")));
    Estimate by = moved(new Sketch("a").cam(pooled), new Sketch("b").cam(pooled));
    assertThat(by.expanded95()).isCloseTo(1.96 * 0.01 * Math.sqrt(2), within(1e-5));
  }

  @Test
  void aStopFoundAnewDoesNotCancel() {
    Estimate by = moved(new Sketch("a").cam(3), new Sketch("b").cam(3.1));
    assertThat(by.value()).isCloseTo(0.1, within(1e-12));
    assertThat(by.u()).isCloseTo(Math.sqrt(2) * Math.hypot(0.002, 0.01), within(1e-12));
  }

  @Test
  void aStopBroughtFromTheOtherOrBothFromAThirdCancels() {
    double left = Math.sqrt(2) * 0.002;
    Sketch a = new Sketch("a").cam(3);
    assertThat(moved(a, new Sketch("b").cam(3).reference("a")).u()).isCloseTo(left, within(1e-12));
    assertThat(moved(new Sketch("b").cam(3).reference("a"), a).u()).isCloseTo(left, within(1e-12));
    Sketch third = new Sketch("b").cam(3).reference("r");
    assertThat(moved(new Sketch("a").cam(3).reference("r"), third).u())
        .isCloseTo(left, within(1e-12));
    assertThat(moved(a, third).u()).isGreaterThan(0.014);
    assertThat(moved(new Sketch("a").cam(3).reference("q"), third).u()).isGreaterThan(0.014);
  }

  @Test
  void scaleCancelsButForTheDistanceMoved() {
    // u of scale 0.001 at x: 0.003 before, 0.0035 after; one error: 0.0005 is left.
    Measured there = figure(3, part("scale", 0.003));
    Measured here = figure(3.5, part("scale", 0.0035));
    Sketch a = new Sketch("a").cam(there);
    assertThat(moved(a, new Sketch("b").cam(here)).u()).isCloseTo(0.0005, within(1e-12));
    Sketch recalibrated = new Sketch("b").cam(here).sensor("handwheel", 1, 0.002);
    assertThat(moved(a, recalibrated).u()).isCloseTo(Math.hypot(0.003, 0.0035), within(1e-12));
  }

  @Test
  void timingAndLostMotionCancelWithinOneResultOnly() {
    for (String part : List.of("skew", "play", "play-assumed", "registration:2")) {
      Measured at = figure(3, part("fit", 0.001), part(part, 0.01));
      assertThat(moved(new Sketch("a").cam(at), new Sketch("b").cam(at)).u())
          .as(part + " apart")
          .isCloseTo(Math.sqrt(2) * Math.hypot(0.001, 0.01), within(1e-12));
      assertThat(moved(new Sketch("a").cam(at).setting(0), new Sketch("a").cam(at).setting(1)).u())
          .as(part + " within")
          .isCloseTo(Math.sqrt(2) * 0.001, within(1e-12));
    }
  }

  @Test
  void whatIsEachChangesOwnNeverCancels() {
    for (String part : List.of("fit", "bracket", "resolution", "bounce", "gap", "scatter")) {
      Measured at = figure(3, part(part, 0.01));
      assertThat(moved(new Sketch("a").cam(at).setting(0), new Sketch("a").cam(at).setting(1)).u())
          .as(part)
          .isCloseTo(Math.sqrt(2) * 0.01, within(1e-12));
    }
  }

  @Test
  void oneMeasurementTwiceHasNotMoved() {
    Comparison twice =
        Comparison.of(new Sketch("a").cam(3).account(), new Sketch("a").cam(3).account());
    assertThat(Sketch.moved(twice, 1)).contains(Estimate.exact(0));
    assertThat(twice.answer()).isEqualTo(Seen.NO_MOVE);
    // Another sheet (a skew it states, say) moves figures of the same recordings, not the valve.
    Comparison again =
        Comparison.of(
            new Sketch("a").cam(3).recordings("r").account(),
            new Sketch("b").cam(3.5).recordings("r").sheet("other").account());
    assertThat(Sketch.moved(again, 1).orElseThrow().u()).isZero();
    assertThat(again.answer()).isEqualTo(Seen.NO_MOVE);
    assertThat(again.notes()).extracting(Note::code).contains(Note.Code.SAME_RECORDINGS);
  }

  @Test
  void aFigureWithoutPartsIsItsOwn() {
    Measured bare = new Measured(3, 0.01, 0.0196, List.of());
    assertThat(moved(new Sketch("a").cam(bare), new Sketch("b").cam(bare)).u())
        .isCloseTo(Math.sqrt(2) * 0.01, within(1e-12));
  }
}
