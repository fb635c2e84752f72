package tripline.harness.report;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tripline.result.Result;
import tripline.result.Result.Backoff;
import tripline.result.Result.CamResult;
import tripline.result.Result.Measured;
import tripline.result.Result.PartResult;
import tripline.result.Result.StopResult;

/** Why a figure could not be decided, and what would decide it. */
final class Undecided {
  /** Guard band in standard uncertainties, one-sided 95 % (ISO 14253-1). */
  private static final double GUARD = 1.645;

  private Undecided() {}

  static String why(Rounded rounded, Result result, EndView view) {
    Backoff backoff = view.result().backoff();
    Double value = backoff.value();
    if (value == null) {
      StopResult stop =
          view.name().equals("closed") ? result.travel().closedStop() : result.travel().openStop();
      return stop == null
          ? "the %s stop is not known: run by hand to it, mark it, and record the way back"
              .formatted(view.name())
          : "the limit contact was not seen to change on the way to this end: stroke to it";
    }
    return reach(
        rounded,
        value,
        backoff.u(),
        backoff.u95(),
        backoff.target() - backoff.tolerance(),
        backoff.target() + backoff.tolerance(),
        backoff.estimate());
  }

  static String why(Rounded rounded, CamResult cam) {
    if (cam.trip() == null) {
      return "was not seen to change on the way to the " + cam.from() + " end: stroke past it";
    }
    if (cam.target() == null || cam.tolerance() == null) {
      return "its target is not known in turns: needs the stop it is measured from, or the span";
    }
    return reach(
        rounded,
        cam.trip(),
        cam.u(),
        cam.u95(),
        cam.target() - cam.tolerance(),
        cam.target() + cam.tolerance(),
        cam.estimate());
  }

  private static String reach(
      Rounded rounded,
      double value,
      @Nullable Double u,
      @Nullable Double u95,
      double lower,
      double upper,
      @Nullable Measured estimate) {
    double limit = Math.abs(value - lower) < Math.abs(value - upper) ? lower : upper;
    double distance = Math.abs(value - limit);
    StringBuilder text = new StringBuilder("the limit ");
    text.append(rounded.target(limit, null)).append(" lies within its uncertainty");
    if (u != null && u95 != null && u > 0 && distance > 0) {
      double needed = distance / GUARD * (u95 / u);
      text.append("; known to ")
          .append(rounded.half(needed))
          .append(" turns or better it would be decided");
    }
    largest(estimate).ifPresent(p -> text.append(". Largest part: ").append(hint(p)));
    return text.toString();
  }

  private static Optional<PartResult> largest(@Nullable Measured estimate) {
    List<PartResult> parts = estimate == null ? List.of() : estimate.parts();
    return parts.stream().max(Comparator.comparingDouble(p -> Math.abs(p.u())));
  }

  private static String hint(PartResult part) {
    String name = part.name();
    String kind = name.contains(":") ? name.substring(0, name.indexOf(':')) : name;
    return switch (kind) {
      case "stop", "stop-count" -> "the hard stop; touch it again, more than once";
      case "fit" -> "noise of the position; go slower or repeat the stroke";
      case "bounce" ->
          "bounce of the contact between samples; sample faster or latch the first edge";
      case "gap" -> "position readings missing there; repeat the stroke";
      case "bracket" -> "time between contact samples; go slower past it or sample faster";
      case "repeat", "scatter" -> "scatter from stroke to stroke; repeat the stroke";
      case "scale" -> "the scale; calibrate turns_per_unit";
      case "skew" -> "clock skew of position and contacts; go slower past it";
      case "resolution" -> "the encoder's step; use a finer one";
      default -> name;
    };
  }
}
