package tripline.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tripline.job.JobSheet;
import tripline.job.SensorSide;
import tripline.reduce.Change;
import tripline.reduce.Place;
import tripline.sample.ContactState;
import tripline.truth.Logger;
import tripline.truth.LoggerPlan;
import tripline.truth.Rng;
import tripline.truth.Sensor;
import tripline.truth.TrueChange;

/**
 * Limit contacts that stop their own motor: the change lies on a kink of the path. A smooth fit
 * through it is off along the travel by as much as its own uncertainty, and always to the same
 * side.
 */
class TrippedTest {
  private static final int RUNS = 40;

  @ParameterizedTest
  @CsvSource({
    "200, 0.0003, 0.0005",
    "50, 0.001, 0.0005",
    "1000, 0.001, 0.0005",
    "5000, 0, 0.005",
    "1000, 0, 0.0416666667",
    "1000, 0.003, 0.0416666667",
    "1000, 0.01, 0.0416666667"
  })
  void theReadingAtAStopIsWhereThePathWas(double rateHz, double noise, double resolution) {
    List<Double> ratios = new ArrayList<>();
    Sensor sensor = Sensor.turns(SensorSide.DRIVE, resolution, noise);
    for (int seed = 1; seed <= RUNS; seed++) {
      ratios.addAll(
          errorsInU(Run.of(Cell.Motion.TRIPPED, seed), sensor, rateHz, seed, Which.LAST_OF_STROKE));
    }
    assertThat(ratios).hasSize(2 * RUNS);
    double mean = ratios.stream().mapToDouble(r -> r).average().orElseThrow();
    long held = ratios.stream().filter(r -> Math.abs(r) <= 1.96).count();
    // 80 ratios: their mean is known to 0.11, a share of 95 % to 2.4 %.
    assertThat(mean).isCloseTo(0, within(0.45));
    assertThat(held).isGreaterThanOrEqualTo(70);
  }

  /**
   * Slow drives whose encoder flickers between two counts for so long that half a second holds many
   * runs of readings, and four counts: the side that tells has to be waited for.
   */
  @ParameterizedTest
  @ValueSource(ints = {9003, 9026, 9046, 9052, 9094})
  void aCoarseFlickeringEncoderIsFollowedForLongEnough(int seed) {
    Sensor sensor = Sensor.turns(SensorSide.DRIVE, 1 / 24.0, 0.01);
    assertThat(errorsInU(Run.of(Cell.Motion.TRIPPED, seed), sensor, 1000, seed, Which.ALL))
        .allSatisfy(ratio -> assertThat(ratio).isBetween(-5.0, 5.0));
  }

  private enum Which {
    LAST_OF_STROKE,
    ALL
  }

  /** Errors along the travel, in standard uncertainties. */
  private static List<Double> errorsInU(
      Run run, Sensor sensor, double rateHz, long seed, Which which) {
    Logger logger = new Logger(LoggerPlan.plain(rateHz).with(LoggerPlan.Inputs.LATCHED), sensor);
    JobSheet sheet = run.sheet(sensor, Run.Limit.LOWER);
    Reducer reducer = AccuracyStudy.reduction(Pipeline.settings(sheet));
    logger.record(
        run.actuator.path(),
        run.timeline,
        Run.CONTACTS,
        run.actuator.marks(),
        new Rng(seed),
        reducer.sink());
    List<Change> changes = reducer.finish().changes();
    List<TrueChange> truths = run.actuator.changes();
    List<Double> ratios = new ArrayList<>();
    for (int i = 0; i < truths.size(); i++) {
      TrueChange truth = truths.get(i);
      if (which == Which.ALL
          || i + 1 == truths.size()
          || truths.get(i + 1).stroke() != truth.stroke()) {
        Change seen = seen(truth, changes);
        double path = sensor.exact(run.actuator.path(), seen.timeNs() * 1e-9);
        Place place = seen.place();
        ratios.add((place.reading() - path) * Math.signum(truth.speed()) / place.u());
      }
    }
    return ratios;
  }

  private static Change seen(TrueChange truth, List<Change> changes) {
    return changes.stream()
        .filter(c -> c.channel() == truth.channel())
        .filter(c -> (c.to() == ContactState.CLOSED) == truth.closed())
        .filter(c -> Math.abs(c.timeNs() * 1e-9 - truth.timeS()) < 0.03)
        .findFirst()
        .orElseThrow();
  }
}
