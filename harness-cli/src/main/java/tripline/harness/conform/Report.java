package tripline.harness.conform;

import java.util.List;
import tripline.link.Identity;

/**
 * How a logger stands to every duty.
 *
 * @param logger who it says it is
 * @param lines one a duty
 */
public record Report(Identity logger, List<Line> lines) {
  public Report {
    lines = List.copyOf(lines);
  }

  /**
   * One duty.
   *
   * @param duty which
   * @param outcome how it stands
   * @param seen what was seen against it, or why nothing was
   */
  public record Line(Duty duty, Outcome outcome, List<String> seen) {
    public Line {
      seen = List.copyOf(seen);
    }
  }

  /** How many duties stand so. */
  public long count(Outcome outcome) {
    return lines.stream().filter(line -> line.outcome() == outcome).count();
  }
}
