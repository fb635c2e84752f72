package tripline.harness.rehearse.valve;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tripline.job.End;

/**
 * How a valve really is, in words: a line a figure, its name first, travel in turns. What a
 * measurement of it may be held against.
 */
public final class Truth {
  private Truth() {}

  /** One line each: stops, play, where it stands, and every trip point of every cam. */
  public static List<String> of(VirtualValve valve) {
    ValveBuild build = valve.build();
    List<String> lines = new ArrayList<>();
    lines.add(line("span %.4f", build.spanTurns()));
    lines.add(
        line(
            "lost-motion %.4f; with the least differential of a cam, which no measurement can tell"
                + " from it, %.4f",
            build.lostMotionTurns(), build.lostMotionTurns() + leastDifferential(valve)));
    lines.add(line("motor-speed %.4f turns/s", build.motor().turnsPerS()));
    lines.add(
        line(
            "stands-at %.4f (%.1f %% open)",
            valve.driveTurns(), 100 * valve.driveTurns() / build.spanTurns()));
    for (int c = 0; c < build.cams().size(); c++) {
      for (int p = 0; p < build.cams().get(c).points().size(); p++) {
        lines.add(trip(valve, c, p));
      }
    }
    return List.copyOf(lines);
  }

  /** The least distance between a trip point's two directions, over all cams, turns. */
  public static double leastDifferential(VirtualValve valve) {
    double least = Double.POSITIVE_INFINITY;
    for (int c = 0; c < valve.build().cams().size(); c++) {
      for (int p = 0; p < valve.build().cams().get(c).points().size(); p++) {
        double apart = valve.tripTurns(c, p, End.OPEN) - valve.tripTurns(c, p, End.CLOSED);
        least = Math.min(least, apart);
      }
    }
    return least;
  }

  private static String trip(VirtualValve valve, int cam, int point) {
    CamBuild built = valve.build().cams().get(cam);
    CamBuild.Point asked = built.points().get(point);
    double closing = valve.tripTurns(cam, point, End.CLOSED);
    double opening = valve.tripTurns(cam, point, End.OPEN);
    double trip = asked.from() == End.CLOSED ? closing : opening;
    double off = trip - asked.targetTurns();
    return line(
        "cam %s trips %.4f closing %.4f opening; judged %s, target %.4f +- %.4f, off %+.4f: %s",
        built.name(),
        closing,
        opening,
        asked.from() == End.CLOSED ? "closing" : "opening",
        asked.targetTurns(),
        asked.toleranceTurns(),
        off,
        Math.abs(off) <= asked.toleranceTurns() ? "right" : "wrong");
  }

  private static String line(String format, Object... figures) {
    return String.format(Locale.ROOT, format, figures);
  }
}
