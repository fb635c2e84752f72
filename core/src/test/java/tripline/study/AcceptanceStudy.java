package tripline.study;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Whether tolerance intervals keep their word, from samples to the acceptance: {@code
 * AcceptanceStudy [RUNS]}, 60 simulated acceptances a cell unless told otherwise. Each has three
 * trip points that scatter by a known law and a hard stop that is known only as well as it is felt.
 */
public final class AcceptanceStudy {
  private static final int USUAL_RUNS = 60;

  private AcceptanceStudy() {}

  public static void main(String[] args) {
    int runs = args.length > 0 ? Integer.parseInt(args[0]) : USUAL_RUNS;
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    out.println(
        "drives strokes scatter stop_u  asked   intervals without  holds as said  edge accepted");
    AcceptanceScore all = new AcceptanceScore();
    for (AcceptanceCell cell : cells()) {
      AcceptanceScore score = of(cell, runs);
      all.merge(score);
      out.println(head(cell) + score.line());
    }
    out.println("all of them".concat(" ".repeat(27)) + all.line());
  }

  static AcceptanceScore of(AcceptanceCell cell, int runs) {
    AcceptanceScore score = new AcceptanceScore();
    for (int run = 0; run < runs; run++) {
      score.add(new AcceptanceRun(cell, cell.firstSeed() + run));
    }
    return score;
  }

  private static List<AcceptanceCell> cells() {
    List<AcceptanceCell> cells = new ArrayList<>();
    for (AcceptanceCell.Drives drives : AcceptanceCell.Drives.values()) {
      for (int strokes : new int[] {3, 5, 10}) {
        for (double scatter : new double[] {0.002, 0.01, 0.03}) {
          for (double stopU : new double[] {0.005, 0.02}) {
            cells.add(new AcceptanceCell(drives, strokes, scatter, stopU, 0.95, 0.95));
          }
        }
      }
    }
    cells.add(new AcceptanceCell(AcceptanceCell.Drives.MOTOR, 5, 0.01, 0.01, 0.9, 0.99));
    cells.add(new AcceptanceCell(AcceptanceCell.Drives.MOTOR, 5, 0.01, 0.01, 0.99, 0.9));
    return cells;
  }

  private static String head(AcceptanceCell cell) {
    return String.format(
        Locale.ROOT,
        "%-6s %7d %7.3f %6.3f  %.0f/%.0f  ",
        cell.drives().name().toLowerCase(Locale.ROOT),
        cell.strokes(),
        cell.scatter(),
        cell.stopU(),
        100 * cell.confidence(),
        100 * cell.share());
  }
}
