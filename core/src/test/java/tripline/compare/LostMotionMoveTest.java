package tripline.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tripline.compare.Sketch.figure;
import static tripline.compare.Sketch.part;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import tripline.measure.Estimate;
import tripline.result.Result.CamResult;
import tripline.result.Result.Measured;
import tripline.result.Result.SensorResult;
import tripline.result.Result.TravelResult;

/** Ways back of single cams, with u = 0.003 each, and the bounds that two results made of them. */
class LostMotionMoveTest {
  private static final double U = 0.003;

  /**
   * The bound rests on one cam the first time and on two the second; no cam came back otherwise.
   */
  @Test
  void whichCamsMadeTheBoundIsNoMovement() {
    Comparison seen =
        Comparison.of(valve("a", 0.300, 0.300, 0.320), valve("b", 0.310, 0.300, 0.320));
    Estimate by = seen.lostMotion().by().orElseThrow();
    assertThat(by.value()).isCloseTo(0, within(1e-12));
    // Two cams, each measured twice: 0.003 * sqrt(2) / sqrt(2).
    assertThat(by.u()).isCloseTo(U, within(1e-12));
    assertThat(seen.lostMotion().before().orElseThrow().value()).isEqualTo(0.300);
    assertThat(seen.lostMotion().after().orElseThrow().value()).isEqualTo(0.310);
    assertThat(seen.lostMotion().seen()).isEqualTo(Seen.NO_MOVE);
  }

  /** Stops felt anew, 0.01 each; the way of the handwheel between them is longer by 0.05. */
  @Test
  void theSpanIsTheWayBetweenTheStopsLessLostMotion() {
    Comparison seen =
        Comparison.of(
            span(valve("a", 0.300, 0.300, 0.320), 10.000),
            span(valve("b", 0.310, 0.300, 0.320), 10.040));
    Estimate by = seen.span().by().orElseThrow();
    assertThat(by.value()).isCloseTo(0.050, within(1e-12));
    assertThat(by.u()).isCloseTo(Math.sqrt(4 * 0.01 * 0.01 + U * U), within(1e-12));
  }

  @Test
  void wornPlayShowsInEveryCam() {
    Comparison seen =
        Comparison.of(valve("a", 0.300, 0.300, 0.320), valve("b", 0.330, 0.330, 0.350));
    assertThat(seen.lostMotion().by().orElseThrow().value()).isCloseTo(0.03, within(1e-12));
    assertThat(seen.lostMotion().seen()).isEqualTo(Seen.MOVED);
  }

  /** Offsets of +0.012 and -0.012 with u = 0.00424 each: Birge's ratio is 4 / sqrt(1). */
  @Test
  void camsThatDisagreeWidenIt() {
    Comparison seen =
        Comparison.of(valve("a", 0.300, 0.300, 0.330), valve("b", 0.300, 0.312, 0.318));
    double ratio = 0.012 / (U * Math.sqrt(2)) * Math.sqrt(2);
    assertThat(seen.lostMotion().by().orElseThrow().u()).isCloseTo(ratio * U, within(1e-9));
  }

  @Test
  void aSensorOnTheDriveSideComparesTheFiguresThemselves() {
    Comparison seen =
        Comparison.of(
            drive(valve("a", 0.010, 0.300, 0.320)), drive(valve("b", 0.020, 0.300, 0.320)));
    assertThat(seen.lostMotion().by().orElseThrow().value()).isCloseTo(0.010, within(1e-12));
  }

  private static Account valve(String name, double bound, double... waysBack) {
    Sketch sketch = new Sketch(name);
    for (int i = 0; i < waysBack.length; i++) {
      sketch.cam(1.0 + i);
    }
    Account account = sketch.account();
    List<CamResult> cams = new ArrayList<>();
    for (int i = 0; i < waysBack.length; i++) {
      cams.add(
          with(
              account.cams().get(i),
              figure(waysBack[i] - bound, part("fit", U), part("play", 0.0007))));
    }
    return with(account, cams, figure(bound, part("fit", 0.0007)), null, "handwheel");
  }

  private static Account span(Account a, double span) {
    Measured figure =
        figure(span, part("play", 0.0007), part("stop:closed", 0.01), part("stop:open", 0.01));
    return with(a, a.cams(), a.travel().lostMotion(), figure, "handwheel");
  }

  private static Account drive(Account a) {
    return with(a, a.cams(), a.travel().lostMotion(), null, "drive");
  }

  private static CamResult with(CamResult c, Measured differential) {
    return new CamResult(
        c.cam(),
        c.edge(),
        c.trip(),
        c.u(),
        c.u95(),
        c.target(),
        c.tolerance(),
        c.targetPercent(),
        c.from(),
        c.decision(),
        c.probability(),
        differential,
        c.strokes(),
        c.spread(),
        c.opening(),
        c.closing(),
        c.estimate(),
        c.adjust());
  }

  private static Account with(
      Account a, List<CamResult> cams, Measured lost, Measured span, String side) {
    TravelResult t = a.travel();
    TravelResult travel =
        new TravelResult(
            t.datum(),
            t.datumPosition(),
            new SensorResult(side, 1, 0.001),
            t.closedStop(),
            t.openStop(),
            span,
            lost,
            null);
    return new Account(a.tag(), a.origin(), a.decision(), travel, cams, a.contacts(), a.ends());
  }
}
