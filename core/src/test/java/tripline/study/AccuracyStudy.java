package tripline.study;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import tripline.reduce.Reduction;
import tripline.reduce.ReductionSettings;
import tripline.reduce.Trace;
import tripline.sample.SampleSink;
import tripline.truth.LoggerPlan;

/**
 * The accuracy study: {@code AccuracyStudy [quick|full|RUNS] [FIRST_SEED] [RATES_HZ]}, e.g. {@code
 * 500 1 50,200}. Prints a line a cell; a {@code !} marks what misses its goal.
 */
public final class AccuracyStudy {
  private static final double STRAIGHT_GOAL = 1.15;
  private static final double HAND_GOAL = 1.6;
  private static final double COUNT_GOAL = 1 / 8.0;

  private AccuracyStudy() {}

  public static void main(String[] args) {
    String size = args.length > 0 ? args[0] : "quick";
    int runs =
        switch (size) {
          case "quick" -> 8;
          case "full" -> 200;
          default -> Integer.parseInt(size);
        };
    int seed = args.length > 1 ? Integer.parseInt(args[1]) : 1;
    double[] rates =
        args.length > 2
            ? Stream.of(args[2].split(",")).mapToDouble(Double::parseDouble).toArray()
            : Cell.RATES_HZ;
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    long began = System.nanoTime();
    ChangeStudy study =
        new ChangeStudy(
                AccuracyStudy::reduction,
                LoggerPlan.Inputs.LATCHED,
                Cell.Motion.values(),
                rates,
                Cell.NOISES,
                Cell.RESOLUTIONS)
            .judging();
    print(out, study.run(seed, runs));
    out.printf(Locale.ROOT, "%d runs a cell, %.0f s%n", runs, (System.nanoTime() - began) * 1e-9);
  }

  private static void print(PrintStream out, Map<Cell, Score> scores) {
    out.println(
        "motion   rate Hz  noise count turn | changes missed invented | rms turn  x floor  counts"
            + "  worst turn | 95 % covers | backoffs without   rms turn 95 % covers at limit accepted");
    scores.forEach(
        (cell, score) -> {
          ChangeScore s = score.changes;
          BackoffScore b = score.backoffs;
          out.printf(
              Locale.ROOT,
              "%-8s %7.0f %6.3f %10.4f | %7d %6d %8d | %8.6f %7.2f %7.3f%s %10.5f | %6.1f %%%s %s%n",
              cell.motion().name().toLowerCase(Locale.ROOT),
              cell.rateHz(),
              cell.noise(),
              cell.resolution(),
              s.truths,
              s.missed(),
              s.invented,
              s.rms(),
              s.overFloor(),
              s.rms() / cell.resolution(),
              sharp(cell, s) ? " " : "!",
              s.worst(),
              100 * s.coverage(),
              covers(s.coverage(), s.found) ? " " : "!",
              b.count == 0 ? "" : b.line());
        });
  }

  /** Within the goal of its motion, or of coarse counts. */
  static boolean sharp(Cell cell, ChangeScore s) {
    double goal = cell.motion() == Cell.Motion.STRAIGHT ? STRAIGHT_GOAL : HAND_GOAL;
    return s.overFloor() <= goal || (cell.coarse() && s.rms() <= COUNT_GOAL * cell.resolution());
  }

  /** 93-97 %, widened by three standard deviations of what so many can tell. */
  static boolean covers(double share, int of) {
    double slack = 3 * Math.sqrt(0.95 * 0.05 / of);
    return share >= 0.93 - slack && share <= 0.97 + slack;
  }

  static Reducer reduction(ReductionSettings settings) {
    Reduction reduction = new Reduction(settings);
    return new Reducer() {
      @Override
      public SampleSink sink() {
        return reduction;
      }

      @Override
      public Trace finish() {
        return reduction.finish();
      }
    };
  }
}
