package tripline.finding;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import tripline.assess.Amounts;
import tripline.assess.Assessment;
import tripline.measure.Drift;
import tripline.measure.Repeatability;
import tripline.measure.Step;

/**
 * {@code trip-drift}: a trend or a step over stroke number that scatter does not explain, in one
 * direction, and large enough to matter. One finding a cam: the clearest of its series.
 */
final class TripDrift implements Look {
  /** Strokes one way below which nothing is said. */
  static final int FEWEST = 3;

  /** Chance of a false alarm in one series; several are looked at. */
  private static final double CHANCE = 1e-3;

  /** A movement below this share of the tolerance over all strokes is left alone. */
  private static final double SHARE_OF_TOLERANCE = 0.25;

  private static final double SIGNIFICANT_U = 3;

  private record Creep(Series series, String shape, double moved, double chance) {}

  @Override
  public void look(Assessment assessment, FindingSink sink) {
    List<Series> all = Series.all(assessment);
    Map<String, Creep> worst = new HashMap<>();
    for (Series series : all) {
      creep(series, all)
          .ifPresent(
              c ->
                  worst.merge(
                      series.cam().target().cam(),
                      c,
                      (a, b) -> Math.abs(b.moved()) > Math.abs(a.moved()) ? b : a));
    }
    worst.values().stream()
        .sorted(Comparator.comparing(c -> c.series().cam().target().cam()))
        .forEach(c -> sink.onFinding(finding(c)));
  }

  private static Optional<Creep> creep(Series series, List<Series> all) {
    double[] values = series.values();
    if (values.length < FEWEST) {
      return Optional.empty();
    }
    Repeatability known = series.elsewhere(all);
    double least = Math.max(series.ownU(), Double.MIN_NORMAL);
    Drift drift = Drift.of(values, known, least);
    Step step = Step.of(values, known, least);
    double along = drift.perStroke() * (values.length - 1);
    double tolerance = series.cam().target().toleranceTurns().orElse(0);
    double matters = Math.max(SHARE_OF_TOLERANCE * tolerance, SIGNIFICANT_U * series.ownU());
    boolean drifts = drift.probability() < CHANCE && Math.abs(along) > matters;
    boolean steps = step.probability() < CHANCE && Math.abs(step.size()) > matters;
    if (steps && (!drifts || step.residualSd() < drift.residualSd())) {
      return Optional.of(new Creep(series, "step", step.size(), step.probability()));
    }
    return drifts
        ? Optional.of(new Creep(series, "trend", along, drift.probability()))
        : Optional.empty();
  }

  private static Finding finding(Creep creep) {
    Series series = creep.series();
    int strokes = series.crossings().size();
    double[] values = series.values();
    return Draft.of(Code.TRIP_DRIFT)
        .cam(series.cam().target().cam())
        .trip(series.crossings().get(strokes - 1).trip())
        .evidence("moved", creep.moved())
        .evidence("first", values[0])
        .evidence("last", values[strokes - 1])
        .evidence("strokes", strokes)
        .evidence("shape", creep.shape())
        .evidence("chance", creep.chance())
        .says(
            String.format(
                Locale.ROOT,
                "%s does not stay: its trip point while %s moved %s toward %s over %d strokes, %s.",
                Text.capital(Text.cam(series.cam().target())),
                series.direction().word(),
                Amounts.turns(Math.abs(creep.moved())),
                creep.moved() > 0 ? "open" : "closed",
                strokes,
                creep.shape().equals("step") ? "in one step" : "stroke by stroke"),
            "Its gear has not re-engaged after adjusting, or its lock is loose: engage it, set the"
                + " cam again and prove it by several strokes.");
  }
}
