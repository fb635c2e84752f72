package tripline.develop;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import tripline.job.Direction;
import tripline.job.JobSheet;
import tripline.job.SensorSide;
import tripline.measure.Estimate;
import tripline.travel.RecordingTrace;
import tripline.truth.LoggerPlan;
import tripline.truth.Rng;
import tripline.truth.Sensor;

/**
 * Backoffs from samples to figures: the 95 % intervals hold the truth about that often, at both
 * ends, on every kind of sensor, with the stops marked or found.
 */
class BackoffCoverageTest {
  private static final int SEEDS = 60;

  /** 95 % of 120, and three standard deviations of that count. */
  private static final int LEAST = 107;

  static Stream<Arguments> sensors() {
    return Stream.of(SensorSide.values())
        .flatMap(
            side ->
                Stream.of(
                    Arguments.of(side, 0.0005, 0.0005, 1000),
                    Arguments.of(side, 0.0005, 0.01, 200),
                    Arguments.of(side, 0.01, 0, 1000),
                    Arguments.of(side, 1 / 24.0, 0, 500)));
  }

  @ParameterizedTest
  @MethodSource("sensors")
  void intervalsHoldTheTruth(SensorSide side, double resolution, double noise, int rateHz) {
    int held = 0;
    for (int seed = 0; seed < SEEDS; seed++) {
      Development development = development(side, resolution, noise, rateHz, seed, seed % 2 == 0);
      assertThat(development.strokes()).hasSize(3);
      assertThat(development.settings()).hasSize(1);
      Estimate span = development.coordinate().span().orElseThrow();
      held += holds(trip(development, 0, Direction.CLOSING), 0.5) ? 1 : 0;
      // the open cam trips 0.05 turn later while opening than its closing trip, half a turn in
      held += holds(span.minus(trip(development, 2, Direction.OPENING)), 0.45) ? 1 : 0;
    }
    assertThat(held).isBetween(LEAST, 2 * SEEDS);
  }

  private static Development development(
      SensorSide side, double resolution, double noise, int rateHz, int seed, boolean marked) {
    Sensor sensor =
        Sensor.turns(side, resolution, noise).withOffset(new Rng(seed).uniform(0, 50), 0);
    JobSheet sheet = Demo.sheet(HandJob.channel(sensor));
    HandJob job = new HandJob(Demo.actuator(), 4, seed, Demo.STOP_U).fullStrokes(marked);
    Recorder recorder = new Recorder(LoggerPlan.plain(rateHz), sensor, sheet.position());
    return HandJob.develop(sheet, recorder.record(job, RecordingTrace.Zero.LOST, seed));
  }

  private static Estimate trip(Development development, int channel, Direction direction) {
    return development.trips(channel, 0).stream()
        .filter(t -> t.direction().equals(Optional.of(direction)))
        .reduce((first, second) -> second)
        .orElseThrow()
        .x()
        .orElseThrow();
  }

  private static boolean holds(Estimate figure, double truth) {
    return Math.abs(figure.value() - truth) <= figure.expanded95();
  }

  @Test
  void aStopUStatedTooSmallShows() {
    int held = 0;
    for (int seed = 0; seed < SEEDS; seed++) {
      Sensor sensor = Sensor.turns(SensorSide.HANDWHEEL, 0.0005, 0.0005);
      JobSheet sheet = Demo.sheet(HandJob.channel(sensor));
      HandJob job = new HandJob(Demo.actuator(), 4, seed, 3 * Demo.STOP_U).fullStrokes(true);
      Recorder recorder = new Recorder(LoggerPlan.plain(1000), sensor, sheet.position());
      Development development =
          HandJob.develop(sheet, recorder.record(job, RecordingTrace.Zero.LOST, seed));
      held += holds(trip(development, 0, Direction.CLOSING), 0.5) ? 1 : 0;
    }
    assertThat(held).isLessThan(SEEDS * 9 / 10);
  }
}
