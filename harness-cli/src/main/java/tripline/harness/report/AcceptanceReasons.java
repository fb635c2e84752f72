package tripline.harness.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import tripline.measure.Decision;
import tripline.result.AcceptanceResult;
import tripline.result.AcceptanceResult.AcceptedTrip;

/** Why strokes together do not accept, and how many more would settle it. */
final class AcceptanceReasons {
  private final AcceptanceResult accepted;
  private final Rounded rounded;

  AcceptanceReasons(AcceptanceResult accepted, Rounded rounded) {
    this.accepted = accepted;
    this.rounded = rounded;
  }

  /** The cams at fault and, where strokes help, how many: for the head of an answer. */
  static List<String> why(AcceptanceResult accepted, Decision decision) {
    List<String> cams =
        accepted.trips().stream()
            .filter(t -> t.required() && t.decision() == decision)
            .map(AcceptanceReasons::name)
            .toList();
    List<String> why = new ArrayList<>();
    if (decision == Decision.REJECT && !cams.isEmpty()) {
      why.add("rejected over its strokes: cam " + String.join(", ", cams));
    }
    if (decision == Decision.UNDECIDED && accepted.decision() == Decision.UNDECIDED) {
      String whose =
          cams.isEmpty()
              ? ""
              : cams.size() == accepted.trips().stream().filter(AcceptedTrip::required).count()
                  ? " (all cams)"
                  : " (cam " + String.join(", ", cams) + ")";
      why.add("undecided over its strokes" + whose + more(accepted));
    }
    return why;
  }

  private static String more(AcceptanceResult accepted) {
    Integer opening = accepted.moreOpening();
    Integer closing = accepted.moreClosing();
    if (opening == null || closing == null) {
      return "";
    }
    if (opening.equals(closing)) {
      return ": needs " + HeadText.counted(opening, "more stroke") + " each way";
    }
    List<String> each = new ArrayList<>();
    if (opening > 0) {
      each.add(HeadText.counted(opening, "more stroke") + " opening");
    }
    if (closing > 0) {
      each.add(HeadText.counted(closing, "more stroke") + " closing");
    }
    return ": needs " + String.join(" and ", each);
  }

  static String name(AcceptedTrip trip) {
    return trip.edge() == null ? trip.cam() : trip.cam() + " " + trip.edge();
  }

  /** Each reason once, with the cams it holds for. */
  Map<String, String> byReason() {
    Map<String, List<String>> cams = new LinkedHashMap<>();
    for (AcceptedTrip trip : accepted.trips()) {
      String reason = reason(trip);
      if (!reason.isEmpty()) {
        cams.computeIfAbsent(reason, r -> new ArrayList<>()).add(name(trip));
      }
    }
    return cams.entrySet().stream()
        .collect(
            Collectors.toMap(
                Map.Entry::getKey,
                e -> String.join(", ", e.getValue()),
                (a, b) -> a,
                LinkedHashMap::new));
  }

  /** One sentence without its full stop; empty for what is accepted. */
  String reason(AcceptedTrip trip) {
    String reason = trip.reason() == null ? "" : trip.reason();
    return switch (reason) {
      case "few-strokes" ->
          "%s, %d asked for: %s"
              .formatted(
                  HeadText.counted(trip.strokes(), "full stroke"),
                  accepted.strokesAsked(),
                  needed(trip));
      case "not-seen" ->
          "no full stroke changed it on the way to its end: %s".formatted(needed(trip));
      case "scatter" -> scatter(trip);
      case "common" ->
          "what all strokes share, %s turns, leaves no room, and more strokes do not reduce it:"
                  .formatted(rounded.half(number(trip.commonHalf())))
              + " touch the hard stop again, more than once";
      case "outlier" ->
          "one stroke stands out, and an interval that assumes the normal law says nothing then:"
              + " find its cause, then record the strokes anew";
      case "unsteady" ->
          "its trip point moves from stroke to stroke, and an interval that assumes repeats says"
              + " nothing then: find the cause, then record the strokes anew";
      case "outside" ->
          "even read kindly, these strokes leave less than %s of future trips within its tolerance"
              .formatted(percent(accepted.share()));
      case "readings" -> "the position readings cannot be relied on";
      case "no-target" -> "its target is not known in turns: a hard stop or the span is missing";
      default -> "";
    };
  }

  private String scatter(AcceptedTrip trip) {
    String fit =
        "%s times its scatter of %s turn does not fit the tolerance: "
            .formatted(
                AcceptanceWords.factor(number(trip.factor())),
                FigureText.uncertainty(number(trip.sd())));
    return trip.strokesNeeded() == null
        ? fit + "100 strokes like these would not settle it; look for the cause of the scatter"
        : fit + needed(trip);
  }

  /** With two strokes and more it rests on their scatter; with fewer it is what was asked for. */
  private static String needed(AcceptedTrip trip) {
    if (trip.strokesNeeded() == null) {
      return "stroke again";
    }
    int more = trip.strokesNeeded() - trip.strokes();
    String count = HeadText.counted(more, "more stroke");
    return trip.strokes() < 2
        ? count
        : "%s (%d in all) would settle it, if they scatter as these do"
            .formatted(count, trip.strokesNeeded());
  }

  static String percent(double share) {
    return Figures.text(100 * share) + " %";
  }

  private static double number(@org.jspecify.annotations.Nullable Double figure) {
    return figure == null ? 0 : figure;
  }
}
