package tripline.study;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.IntStream;
import tripline.job.JobSheet;
import tripline.job.SensorSide;
import tripline.reduce.Trace;
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
  private final Map<Cell, Score> scores = new LinkedHashMap<>();
  private boolean judges;

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
            scores.put(new Cell(motion, rate, noise, resolution), new Score());
          }
        }
      }
    }
  }

  /**
   * Goes on to a verdict where a hand recording touched the stops, with inputs as most loggers have
   * them, sampled: the verdict allows for what bounce hides between two samples.
   */
  ChangeStudy judging() {
    judges = true;
    return this;
  }

  /** Runs with these seeds; the same seeds give the same scores. */
  Map<Cell, Score> run(int firstSeed, int runs) {
    // Merged in the order of the seeds: sums of doubles depend on it.
    IntStream.range(firstSeed, firstSeed + runs)
        .parallel()
        .mapToObj(this::one)
        .forEachOrdered(one -> one.forEach((cell, score) -> scores.get(cell).merge(score)));
    return scores;
  }

  private Map<Cell, Score> one(int seed) {
    Map<Cell.Motion, Run> made = new EnumMap<>(Cell.Motion.class);
    Map<Cell, Score> one = new LinkedHashMap<>();
    for (Cell cell : scores.keySet()) {
      Run run = made.computeIfAbsent(cell.motion(), m -> Run.of(m, seed));
      one.put(cell, record(run, cell, seed));
    }
    return one;
  }

  private Score record(Run run, Cell cell, int seed) {
    Rng rng = new Rng(seed * 1_000_003L + cell.number());
    SensorSide side = rng.chance(0.5) ? SensorSide.HANDWHEEL : SensorSide.DRIVE;
    Sensor sensor =
        Sensor.turns(side, cell.resolution(), cell.noise())
            .withScale(rng.chance(0.5) ? 1 : -1, 0)
            .withOffset(rng.uniform(0, 100), 0);
    Logger logger = new Logger(LoggerPlan.plain(cell.rateHz()).with(inputs), sensor);
    Run.Limit limit = rng.chance(0.5) ? Run.Limit.LOWER : Run.Limit.UPPER;
    JobSheet sheet = run.sheet(sensor, limit);
    Score score = new Score();
    score.changes.add(run.actuator, logger, trace(run, logger, sheet, rng).changes());
    if (judges && cell.motion().byHand()) {
      Logger usual = new Logger(LoggerPlan.plain(cell.rateHz()), sensor);
      score.backoffs.add(run, Pipeline.result(sheet, trace(run, usual, sheet, rng)).ends());
    }
    return score;
  }

  private Trace trace(Run run, Logger logger, JobSheet sheet, Rng rng) {
    Reducer reducer = maker.make(Pipeline.settings(sheet));
    logger.record(
        run.actuator.path(), run.timeline, Run.CONTACTS, run.actuator.marks(), rng, reducer.sink());
    return reducer.finish();
  }
}
