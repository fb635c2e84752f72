package tripline.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tripline.assess.Bench;
import tripline.assess.Sheets;
import tripline.develop.Stroke.StoppedBy;
import tripline.measure.Decision;
import tripline.result.Result;
import tripline.result.Result.CamResult;
import tripline.sample.Drive;

class VerdictTest {

  private static CamResult cam(Result result, String name) {
    return result.cams().stream().filter(c -> c.cam().equals(name)).findFirst().orElseThrow();
  }

  @Test
  void acceptsASettingThatIsRight() {
    Result result = Verdict.of(Bench.standard().build());
    assertThat(result.cams()).allMatch(c -> c.decision() == Decision.ACCEPT);
    assertThat(result.contacts())
        .allSatisfy(c -> assertThat(c.decision()).as(c.contact()).isEqualTo(Decision.ACCEPT));
    assertThat(result.decision()).isEqualTo(Decision.ACCEPT);
    assertThat(result.ends().closed().backoff().value()).isCloseTo(0.5, within(1e-12));
    assertThat(result.ends().open().backoff().value()).isCloseTo(0.5, within(1e-12));
    assertThat(result.cams()).allMatch(c -> c.adjust() == null);
    assertThat(cam(result, "close").differential().value()).isCloseTo(0.02, within(1e-12));
  }

  /**
   * ISO 14253-1:2017 default and JCGM 106:2012 8.3 at the level of a whole end: tolerance 0.50 ±
   * 0.10 turn, u = 0.02 turn, guard band g = 1.645 u = 0.0329: accepted inside [0.4329, 0.5671],
   * rejected outside [0.3671, 0.6329]. Probabilities by the standard normal law (CALC).
   */
  @ParameterizedTest
  @CsvSource({
    "0.5670, ACCEPT, 0.950529",
    "0.5672, UNDECIDED, 0.949497",
    "0.6000, UNDECIDED, 0.500000",
    "0.6328, UNDECIDED, 0.050503",
    "0.6330, REJECT, 0.049472",
    "0.4330, ACCEPT, 0.950529",
    "0.4328, UNDECIDED, 0.949497",
    "0.3670, REJECT, 0.049472",
  })
  void decidesAnEndByItsGuardBand(double backoff, Decision decision, double probability) {
    Bench bench = Bench.standard();
    bench.uOwn = 0;
    bench.uStop = 0.02;
    bench.shiftCam("close", backoff - 0.5);
    Result closed = Verdict.of(bench.build());
    assertThat(closed.ends().closed().backoff().decision()).isEqualTo(decision);
    assertThat(closed.ends().closed().decision()).isEqualTo(decision);
    assertThat(closed.ends().closed().backoff().probability()).isCloseTo(probability, within(2e-4));
    assertThat(cam(closed, "close").decision()).isEqualTo(decision);
    assertThat(closed.decision()).isEqualTo(decision);
  }

  @Test
  void mirroredActuatorGivesMirroredEnds() {
    Bench one = Bench.standard().shiftCam("close", 0.3);
    Bench other = Bench.standard().shiftCam("open", -0.3);
    Result a = Verdict.of(one.build());
    Result b = Verdict.of(other.build());
    assertThat(b.ends().open().backoff().value())
        .isCloseTo(a.ends().closed().backoff().value(), within(1e-9));
    assertThat(b.ends().open().backoff().u())
        .isCloseTo(a.ends().closed().backoff().u(), within(1e-9));
    assertThat(b.ends().open().decision()).isEqualTo(a.ends().closed().decision());
    assertThat(cam(b, "open").adjust().turns())
        .isCloseTo(-cam(a, "close").adjust().turns(), within(1e-9));
  }

  @Test
  void leavesUndecidedWhatHasNoStop() {
    Bench bench = Bench.standard();
    bench.openStop = Optional.empty();
    Result result = Verdict.of(bench.build());
    assertThat(result.ends().closed().decision()).isEqualTo(Decision.ACCEPT);
    assertThat(result.ends().open().decision()).isEqualTo(Decision.UNDECIDED);
    assertThat(result.ends().open().backoff().value()).isNull();
    assertThat(cam(result, "open").target()).isNull();
    assertThat(cam(result, "open").trip()).isCloseTo(30.5, within(1e-9));
    assertThat(cam(result, "quarter").decision()).isEqualTo(Decision.ACCEPT);
    assertThat(result.decision()).isEqualTo(Decision.UNDECIDED);
  }

  @Test
  void neverAcceptsWhatWasNotExercised() {
    Bench bench = new Bench(Sheets.standard());
    bench.run(0, 10, Drive.HAND, StoppedBy.OPERATOR).run(10, 0, Drive.HAND, StoppedBy.HARD_STOP);
    Result result = Verdict.of(bench.build());
    assertThat(result.ends().closed().decision()).isEqualTo(Decision.ACCEPT);
    assertThat(cam(result, "close").decision()).isEqualTo(Decision.ACCEPT);
    assertThat(cam(result, "open").decision()).isEqualTo(Decision.UNDECIDED);
    assertThat(result.decision()).isEqualTo(Decision.UNDECIDED);
  }

  @Test
  void saysWhatToTurnAndWhichWay() {
    Result late = Verdict.of(Bench.standard().shiftCam("close", -0.3).build());
    var adjust = cam(late, "close").adjust();
    assertThat(adjust.turns()).isCloseTo(0.3, within(1e-9));
    assertThat(adjust.degrees()).isCloseTo(108, within(1e-6));
    assertThat(adjust.words()).contains("0.30 turn (108°) toward open", "too late while closing");
    assertThat(adjust.steps()).hasSize(6);
    assertThat(adjust.steps().get(2)).contains("0.20 turn (72°)");
    assertThat(adjust.steps().get(3)).contains("0.50 turn (180°)");
    assertThat(adjust.steps().get(4)).contains("not tripped here yet", "travelling toward closed");

    Result early = Verdict.of(Bench.standard().shiftCam("quarter", 1.5).build());
    var mid = cam(early, "quarter").adjust();
    assertThat(mid.turns()).isCloseTo(-1.5, within(1e-9));
    assertThat(mid.steps().get(2)).contains("7.75 turns from the closed stop", "toward closed");
    assertThat(mid.steps().get(3)).contains("tripped already");
  }

  @Test
  void marginIsBackoffLessCoast() {
    Result result = Verdict.of(Bench.standard().motor(2).build());
    var closed = result.ends().closed();
    assertThat(closed.stoppedBy()).isEqualTo("limit");
    assertThat(closed.coast().value()).isCloseTo(0.1, within(1e-9));
    assertThat(closed.margin().value())
        .isCloseTo(closed.backoff().value() - closed.coast().value(), within(1e-9));
    assertThat(closed.marginDecision()).isEqualTo(Decision.ACCEPT);
    assertThat(result.ends().open().margin().value()).isCloseTo(0.4, within(1e-9));
    assertThat(result.ends().open().margin().u()).isCloseTo(Math.hypot(0.003, 0.01), within(1e-9));
  }

  @Test
  void scatterBetweenStrokesCounts() {
    Bench bench = new Bench(Sheets.standard()).hand(3);
    bench.shifts.put("k1", new double[] {0, 0.05, 0, -0.05, 0, 0});
    CamResult cam = cam(Verdict.of(bench.build()), "close");
    // s = 0.05, n = 3: s / sqrt 3 * t95(2) / 1.645 = 0.0512; GUM 4.2.3, Student 2.920 (one-sided).
    assertThat(cam.u())
        .isCloseTo(Math.hypot(0.05 / Math.sqrt(3) * 2.920 / 1.645, 0.01), within(1e-4));
    assertThat(cam.spread()).isCloseTo(0.1, within(1e-9));
    assertThat(cam.decision()).isEqualTo(Decision.ACCEPT);
  }

  @Test
  void settingsAreNotPooled() {
    Bench bench = Bench.standard();
    for (int i = 0; i < 2; i++) {
      bench.runs.add(new Bench.Run(0, 31, Drive.HAND, StoppedBy.HARD_STOP, 1));
      bench.runs.add(new Bench.Run(31, 0, Drive.HAND, StoppedBy.HARD_STOP, 1));
    }
    double[] moved = {0.4, 0.4, 0.4, 0.4, 0, 0, 0, 0};
    bench.shifts.put("k1", moved);
    bench.shifts.put("k2", moved);
    bench.shifts.put("k5", moved);
    Result result = Verdict.of(bench.build());
    assertThat(result.decision()).isEqualTo(Decision.ACCEPT);
    assertThat(result.asFound()).hasSize(1);
    assertThat(result.asFound().get(0).ends().closed().decision()).isEqualTo(Decision.REJECT);
    assertThat(result.asFound().get(0).ends().closed().backoff().value())
        .isCloseTo(0.9, within(1e-9));
  }
}
