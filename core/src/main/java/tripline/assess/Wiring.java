package tripline.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import tripline.job.JobSheet;
import tripline.sample.Channels;

/**
 * Which channel carries which contact, judged by what it does.
 *
 * <p>Two channels are taken for exchanged if neither behaves as its own line of the chart and each
 * behaves as the other's: same sense, and far nearer to the other's trip points than to its own.
 * Lines that do the same can be exchanged without anybody noticing, and without harm.
 *
 * @param lines the sheet's contacts and their trip points, in sheet order
 * @param channels the channel that behaves as each of them
 * @param exchanges pairs that are exchanged
 */
record Wiring(List<ChartLine> lines, List<Integer> channels, List<Exchange> exchanges) {
  /** Tolerances beyond which a trip point is not a line's own. */
  private static final double OWN_TOLERANCES = 3;

  /** An exchange must bring both channels this much nearer to the chart. */
  private static final double NEARER = 4;

  /**
   * How near a channel must come to the other's line where the sheet's tolerance is small, turns.
   */
  private static final double NEAR_TURNS = 0.5;

  static Wiring of(JobSheet sheet, List<ChartLine> lines, List<Observed> observed) {
    Channels names = sheet.channels();
    List<Integer> channels = new ArrayList<>();
    lines.forEach(line -> channels.add(names.indexOf(line.contact().channel())));
    List<List<Crossing>> seen = observed.stream().map(o -> o.crossings().toList()).toList();
    List<Exchange> exchanges = new ArrayList<>();
    // Whoever behaves as his own line is exchanged with nobody: few are left to compare in pairs.
    boolean[] settled = new boolean[lines.size()];
    for (int i = 0; i < settled.length; i++) {
      settled[i] = seen.get(i).isEmpty() || fits(seen.get(i), lines.get(i));
    }
    for (int a = 0; a < lines.size(); a++) {
      for (int b = a + 1; b < lines.size() && !settled[a]; b++) {
        if (!settled[b] && exchanged(lines.get(a), seen.get(a), lines.get(b), seen.get(b))) {
          settled[a] = true;
          settled[b] = true;
          exchanges.add(new Exchange(a, b));
          int first = channels.get(a);
          channels.set(a, channels.get(b));
          channels.set(b, first);
        }
      }
    }
    return new Wiring(lines, List.copyOf(channels), List.copyOf(exchanges));
  }

  /** Whether two channels, neither of which behaves as its own line, behave as each other's. */
  private static boolean exchanged(
      ChartLine lineA, List<Crossing> seenA, ChartLine lineB, List<Crossing> seenB) {
    if (lineA.sameAs(lineB) || !fits(seenA, lineB) || !fits(seenB, lineA)) {
      return false;
    }
    boolean senseTells = !Fit.of(seenA, lineA).agrees() && !Fit.of(seenB, lineB).agrees();
    return senseTells || (nearer(seenA, lineA, lineB) && nearer(seenB, lineB, lineA));
  }

  private static boolean nearer(List<Crossing> seen, ChartLine own, ChartLine other) {
    return Fit.of(seen, other).distance() * NEARER < Fit.of(seen, own).distance();
  }

  private static boolean fits(List<Crossing> seen, ChartLine line) {
    Fit fit = Fit.of(seen, line);
    return fit.agrees() && fit.distance() <= reach(line) && coversEdges(seen, line);
  }

  /** A window's line wants both of its edges seen, a single trip point no second one. */
  private static boolean coversEdges(List<Crossing> seen, ChartLine line) {
    return line.edges().stream()
        .allMatch(
            edge -> seen.stream().anyMatch(c -> c.closedAbove() == line.closedAbove(edge.edge())));
  }

  static double reach(ChartLine line) {
    OptionalDouble tolerance =
        line.edges().stream().flatMapToDouble(e -> e.toleranceTurns().stream()).max();
    return Math.max(NEAR_TURNS, OWN_TOLERANCES * tolerance.orElse(0));
  }
}
