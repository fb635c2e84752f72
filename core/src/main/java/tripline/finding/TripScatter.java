package tripline.finding;

import java.util.List;
import java.util.Locale;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import tripline.assess.Assessment;
import tripline.assess.TripTarget;
import tripline.measure.Repeatability;

/**
 * {@code trip-scatter}: repeatability beyond a third of the tolerance, and beyond what the
 * measurement alone explains. Both directions of a trip point are pooled about their own means.
 */
final class TripScatter implements Look {
  static final double SHARE_OF_TOLERANCE = 1.0 / 3;

  /** Degrees of freedom below which nothing is said. */
  private static final int FEWEST = 2;

  private static final double SIGNIFICANCE = 0.01;

  @Override
  public void look(Assessment assessment, FindingSink sink) {
    for (List<Series> trip : Series.byTrip(assessment)) {
      look(trip.get(0).cam().target(), trip, sink);
    }
  }

  private static void look(TripTarget target, List<Series> series, FindingSink sink) {
    Repeatability scatter = Repeatability.pooled(series.stream().map(Series::moments).toList());
    double tolerance = target.toleranceTurns().orElse(Double.POSITIVE_INFINITY);
    double own = series.stream().mapToDouble(Series::ownU).max().orElse(0);
    if (scatter.dof() < FEWEST || scatter.sd() <= SHARE_OF_TOLERANCE * tolerance) {
      return;
    }
    double chiSquared = scatter.dof() * scatter.sd() * scatter.sd() / (own * own);
    boolean beyond =
        own == 0
            || ChiSquaredDistribution.of(scatter.dof()).survivalProbability(chiSquared)
                < SIGNIFICANCE;
    if (beyond) {
      sink.onFinding(finding(target, scatter, tolerance, own));
    }
  }

  private static Finding finding(
      TripTarget target, Repeatability scatter, double tolerance, double own) {
    return Draft.of(Code.TRIP_SCATTER)
        .cam(target.cam())
        .evidence("sd", scatter.sd())
        .evidence("dof", scatter.dof())
        .evidence("measurement_u", own)
        .evidence("limit", SHARE_OF_TOLERANCE * tolerance)
        .says(
            String.format(
                Locale.ROOT,
                "%s repeats badly: its trip points scatter by %.3f turn (one standard deviation),"
                    + " more than a third of the tolerance of %.3f turn.",
                Text.capital(Text.cam(target)),
                scatter.sd(),
                tolerance),
            "Check the cam's lock and gear for play and the contact blocks for wear; take more"
                + " strokes.");
  }
}
