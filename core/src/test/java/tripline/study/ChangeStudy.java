package tripline.study;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import tripline.job.SensorSide;
import tripline.reduce.ReductionSettings;
import tripline.sample.Channels;
import tripline.truth.Logger;
import tripline.truth.LoggerPlan;
import tripline.truth.Rng;
import tripline.truth.Sensor;

/**
 * Readings at changes over a grid of sampling, noise, resolution and motion. Contact inputs catch
 * pulses ({@link LoggerPlan.Inputs#LATCHED}), because the floor supposes that the bracket holds the
 * first edge; what plain sampled inputs cost is a study of its own.
 */
final class ChangeStudy {
  private final Reducer.Maker maker;
  private final LoggerPlan.Inputs inputs;
  private final Map<Cell, ChangeScore> scores = new LinkedHashMap<>();

  ChangeStudy(
      Reducer.Maker maker,
      LoggerPlan.Inputs inputs,
      Cell.Motion[] motions,
      double[] rates,
      double[] noises,
      double[] resolutions) {
    this.maker = maker;
    this.inputs = inputs;
    for (Cell.Motion motion : motions) {
      for (double rate : rates) {
        for (double noise : noises) {
          for (double resolution : resolutions) {
            scores.put(new Cell(motion, rate, noise, resolution), new ChangeScore());
          }
        }
      }
    }
  }

  /** Runs with these seeds; the same seeds give the same scores. */
  Map<Cell, ChangeScore> run(int firstSeed, int runs) {
    IntStream.range(firstSeed, firstSeed + runs).parallel().forEach(this::one);
    return scores;
  }

  private void one(int seed) {
    Map<Cell.Motion, Run> made = new EnumMap<>(Cell.Motion.class);
    for (Map.Entry<Cell, ChangeScore> entry : scores.entrySet()) {
      Cell cell = entry.getKey();
      Run run = made.computeIfAbsent(cell.motion(), m -> Run.of(m, seed));
      ChangeScore score = record(run, cell, seed);
      synchronized (entry.getValue()) {
        entry.getValue().merge(score);
      }
    }
  }

  private ChangeScore record(Run run, Cell cell, int seed) {
    Rng rng = new Rng(seed * 1_000_003L + cell.hashCode());
    SensorSide side = rng.chance(0.5) ? SensorSide.HANDWHEEL : SensorSide.DRIVE;
    Sensor sensor =
        Sensor.turns(side, cell.resolution(), cell.noise())
            .withScale(rng.chance(0.5) ? 1 : -1, 0)
            .withOffset(rng.uniform(0, 100), 0);
    Logger logger = new Logger(LoggerPlan.plain(cell.rateHz()).with(inputs), sensor);
    Channels channels = new Channels(run.actuator.plan().channels());
    Reducer reducer =
        maker.make(
            new ReductionSettings(
                channels,
                10_000_000,
                0,
                sensor.resolution(),
                OptionalDouble.empty(),
                sensor.turnsPerUnit()));
    logger.record(
        run.actuator.path(),
        run.timeline,
        channels.size(),
        run.actuator.marks(),
        rng,
        reducer.sink());
    ChangeScore score = new ChangeScore();
    score.add(run.actuator, logger, reducer.finish().changes());
    return score;
  }
}
