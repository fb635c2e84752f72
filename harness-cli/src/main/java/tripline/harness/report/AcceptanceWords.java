package tripline.harness.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tripline.result.AcceptanceResult;
import tripline.result.AcceptanceResult.AcceptedTrip;
import tripline.result.AcceptanceResult.RepeatabilityResult;
import tripline.result.AcceptanceResult.WorstResult;

/** What several strokes say, in sentences that the terminal and the record share. */
public final class AcceptanceWords {
  /** The most that is looked for. */
  private static final double CERTAIN = 0.9999;

  private final AcceptanceResult accepted;
  private final Rounded rounded;

  /** Sentences for a record. */
  public AcceptanceWords(AcceptanceResult accepted) {
    this(accepted, new Rounded("±"));
  }

  AcceptanceWords(AcceptanceResult accepted, Rounded rounded) {
    this.accepted = accepted;
    this.rounded = rounded;
  }

  /** What is asked for and what was made. */
  public String asked() {
    return "%s opening and %d closing; %d each way asked for, to show with %s confidence that %s of all future trips fall within tolerance"
        .formatted(
            HeadText.counted(accepted.opening(), "full stroke"),
            accepted.closing(),
            accepted.strokesAsked(),
            AcceptanceReasons.percent(accepted.confidence()),
            AcceptanceReasons.percent(accepted.share()));
  }

  /** Which factor each number of strokes stands for. */
  public String factors() {
    Map<Integer, Double> byStrokes = new TreeMap<>();
    byStrokes.put(accepted.strokesAsked(), accepted.askedFactor());
    for (AcceptedTrip trip : accepted.trips()) {
      if (trip.factor() != null) {
        byStrokes.put(trip.strokes(), trip.factor());
      }
    }
    String each =
        byStrokes.entrySet().stream()
            .map(e -> "k = %s for %d strokes".formatted(factor(e.getValue()), e.getKey()))
            .collect(Collectors.joining(", "));
    return "%s: future trips fall within mean %s k s (ISO 16269-6), widened by what all strokes share"
        .formatted(each, rounded.plusMinus());
  }

  /** A factor, to three decimals. */
  public static String factor(double k) {
    return Figures.decimals(k, 3);
  }

  /** What the column "inside" states. */
  public String inside() {
    return "share of future trips that these strokes show to fall within tolerance, with %s confidence"
        .formatted(AcceptanceReasons.percent(accepted.confidence()));
  }

  /** The share these strokes vouch for; rounded down, so that it never claims too much. */
  public static String inside(AcceptedTrip trip) {
    Double share = trip.supportedShare();
    if (share == null) {
      return "-";
    }
    return share >= CERTAIN
        ? "> 99.9 %"
        : "> " + Figures.decimals(Math.floor(1000 * share) / 10, 1) + " %";
  }

  /** What widens each interval and no stroke reduces; empty where nothing does. */
  public String common() {
    Map<String, List<String>> cams = new LinkedHashMap<>();
    TreeSet<String> sources = new TreeSet<>();
    for (AcceptedTrip trip : accepted.trips()) {
      if (trip.commonHalf() != null && trip.commonHalf() > 0) {
        cams.computeIfAbsent(rounded.half(trip.commonHalf()), h -> new ArrayList<>())
            .add(AcceptanceReasons.name(trip));
        trip.commonParts().stream().map(PartWords::of).forEach(sources::add);
      }
    }
    if (cams.isEmpty()) {
      return "";
    }
    return "on either side, "
        + cams.entrySet().stream()
            .map(e -> String.join(", ", e.getValue()) + " " + e.getKey())
            .collect(Collectors.joining("; "))
        + ": %s, which all strokes share and none reduces".formatted(String.join(", ", sources));
  }

  /** Each reason why a cam is not accepted, with the cams it holds for. */
  public List<String> reasons() {
    List<String> lines = new ArrayList<>();
    new AcceptanceReasons(accepted, rounded)
        .byReason()
        .forEach((reason, cams) -> lines.add("Cam %s: %s.".formatted(cams, reason)));
    return lines;
  }

  /** Pooled repeatability with its limit and what it stands on; empty where nothing repeats. */
  public String repeatability() {
    RepeatabilityResult r = accepted.repeatability();
    if (r.sd() == null || r.limit() == null) {
      return "";
    }
    return "s_r = %s turn, pooled over all cams and both directions (%s degrees of freedom); two strokes differ by less than r = %s s_r = %s turn in 95 of 100 cases (ISO 5725-6)"
            .formatted(
                Figures.text(r.sd(), 2),
                Figures.decimals(r.dof(), 0),
                Figures.decimals(r.limitFactor(), 3),
                Figures.text(r.limit(), 2))
        + worst(r.worst());
  }

  private static String worst(@Nullable WorstResult worst) {
    return worst == null || worst.statistic() <= worst.critical()
        ? ""
        : "; %s %s scatters more than its fellows (Cochran %s, above %s at 1 %%) and is not described by it"
            .formatted(
                worst.contact(),
                worst.direction(),
                Figures.decimals(worst.statistic(), 3),
                Figures.decimals(worst.critical(), 3));
  }

  /** Changes that count for nothing: partial approaches. Empty where there are none. */
  public String aside() {
    int aside = accepted.trips().stream().mapToInt(AcceptedTrip::aside).sum();
    return aside == 0
        ? ""
        : "%s of a partial stroke, or of turning back on a full one: only full strokes run the whole gear"
            .formatted(HeadText.counted(aside, "trip"));
  }
}
