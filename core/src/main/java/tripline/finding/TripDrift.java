package tripline.finding;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import tripline.assess.Amounts;
import tripline.assess.Assessment;
import tripline.assess.Crossing;
import tripline.develop.Stroke;
import tripline.job.Direction;

/**
 * {@code trip-drift}: a trend or a step over stroke number that scatter does not explain, in one
 * direction, and large enough to matter. One finding a cam: the trip point that moved most.
 */
final class TripDrift implements Look {
  /** Trip points below which nothing is said, both directions together. */
  static final int FEWEST = 6;

  /** Chance of a false alarm in one trip point; several are looked at. */
  private static final double CHANCE = 3e-4;

  /** A movement below this share of the tolerance over all strokes is left alone. */
  private static final double SHARE_OF_TOLERANCE = 0.25;

  private static final double SIGNIFICANT_U = 3;

  private record Moved(List<Series> series, List<Crossing> crossings, Creep creep) {}

  @Override
  public void look(Assessment assessment, FindingSink sink) {
    Map<String, Moved> worst = new LinkedHashMap<>();
    for (List<Series> trip : Series.byTrip(assessment)) {
      Moved moved = moved(trip);
      if (matters(moved)) {
        worst.merge(
            trip.get(0).cam().target().cam(),
            moved,
            (a, b) -> Math.abs(b.creep().moved()) > Math.abs(a.creep().moved()) ? b : a);
      }
    }
    worst.values().forEach(m -> sink.onFinding(finding(m)));
  }

  private static int inOrder(Crossing a, Crossing b) {
    int recording = Integer.compare(a.trip().recording(), b.trip().recording());
    return recording != 0 ? recording : Double.compare(a.trip().timeS(), b.trip().timeS());
  }

  private static Moved moved(List<Series> trip) {
    List<Crossing> crossings = new ArrayList<>();
    trip.forEach(s -> crossings.addAll(s.crossings()));
    crossings.sort(TripDrift::inOrder);
    List<Stroke> strokes = crossings.stream().map(Crossing::stroke).distinct().toList();
    int n = crossings.size();
    int[] order = new int[n];
    int[] side = new int[n];
    double[] x = new double[n];
    for (int i = 0; i < n; i++) {
      order[i] = strokes.indexOf(crossings.get(i).stroke());
      side[i] = crossings.get(i).direction() == Direction.OPENING ? 0 : 1;
      x[i] = crossings.get(i).x().value();
    }
    double least = trip.stream().mapToDouble(Series::ownU).max().orElse(0);
    Creep creep =
        n < FEWEST
            ? new Creep(Creep.Shape.TREND, 0, 1, 0)
            : Creep.of(order, side, x, least, strokes.size());
    return new Moved(trip, crossings, creep);
  }

  private static boolean matters(Moved moved) {
    double size = Math.abs(moved.creep().moved());
    double tolerance = moved.series().get(0).cam().target().toleranceTurns().orElse(0);
    double own = moved.series().stream().mapToDouble(Series::ownU).max().orElse(0);
    return moved.creep().chance() < CHANCE
        && size > SHARE_OF_TOLERANCE * tolerance
        && size > SIGNIFICANT_U * own;
  }

  private static Finding finding(Moved moved) {
    Series series = moved.series().get(0);
    List<Crossing> crossings = moved.crossings();
    int n = crossings.size();
    double turns = moved.creep().moved();
    return Draft.of(Code.TRIP_DRIFT)
        .cam(series.cam().target().cam())
        .trip(crossings.get(n - 1).trip())
        .evidence("moved", turns)
        .evidence("first", crossings.get(0).x().value())
        .evidence("last", crossings.get(n - 1).x().value())
        .evidence("passages", n)
        .evidence("shape", moved.creep().shape().name().toLowerCase(Locale.ROOT))
        .evidence("chance", moved.creep().chance())
        .evidence("scatter_about_it", moved.creep().residualSd())
        .says(
            String.format(
                Locale.ROOT,
                "%s does not stay: over %d passages its trip point moved %s toward %s, %s.",
                Text.capital(Text.cam(series.cam().target())),
                n,
                Amounts.turns(Math.abs(turns)),
                turns > 0 ? "open" : "closed",
                moved.creep().shape().words()),
            "Its gear has not re-engaged after adjusting, or its lock is loose: engage it, set the"
                + " cam again and prove it by several strokes.");
  }
}
