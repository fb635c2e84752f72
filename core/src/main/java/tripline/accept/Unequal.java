package tripline.accept;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import tripline.measure.Cochran;

/**
 * Cochran's test over the trip points of an actuator: whether one scatters more than its fellows,
 * so that the pooled scatter does not speak for it (ISO 5725-2 7.3.3).
 *
 * @param worst the series with the largest scatter
 * @param statistic its variance over the sum of all
 * @param critical value of the statistic at 1 %
 * @param series how many took part: those with the usual number of strokes
 */
public record Unequal(TripSeries worst, double statistic, double critical, int series) {
  /** Risk of calling a usual scatter unusual. */
  public static final double ALPHA = 0.01;

  static Optional<Unequal> of(List<TripSeries> all) {
    Map<Integer, List<TripSeries>> byLength =
        all.stream()
            .filter(s -> s.n() > 1)
            .collect(Collectors.groupingBy(TripSeries::n, TreeMap::new, Collectors.toList()));
    Optional<List<TripSeries>> usual =
        byLength.values().stream()
            .max(Comparator.comparingInt((List<TripSeries> l) -> l.size()))
            .filter(l -> l.size() > 1);
    return usual.map(Unequal::among);
  }

  private static Unequal among(List<TripSeries> series) {
    TripSeries worst =
        series.stream()
            .max(Comparator.comparingDouble((TripSeries s) -> s.moments().sd()))
            .orElseThrow();
    double[] sds = series.stream().mapToDouble(s -> s.moments().sd()).toArray();
    return new Unequal(
        worst,
        Cochran.statistic(sds),
        Cochran.critical(series.size(), worst.n(), ALPHA),
        series.size());
  }

  /** Whether it does scatter more. */
  public boolean stands() {
    return statistic > critical;
  }
}
