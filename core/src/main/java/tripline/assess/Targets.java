package tripline.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tripline.job.Cam;
import tripline.job.Contact;
import tripline.job.End;
import tripline.job.EndSetting;
import tripline.job.JobSheet;
import tripline.job.TripPlan;
import tripline.measure.Estimate;
import tripline.measure.Part;
import tripline.measure.Shape;
import tripline.measure.TypeB;
import tripline.travel.Coordinate;
import tripline.travel.PartNames;

/**
 * The sheet's trip points in the travel coordinate that was found.
 *
 * <p>Per cent are of the measured span where both stops are known, else of the sheet's. A trip
 * point in per cent from a stop that was never touched is still measured from the other stop, with
 * the sheet's span tolerance as a rectangular part; one in turns is not: a backoff needs its stop.
 */
final class Targets {
  private final JobSheet sheet;
  private final Coordinate coordinate;

  private Targets(JobSheet sheet, Coordinate coordinate) {
    this.sheet = sheet;
    this.coordinate = coordinate;
  }

  /** Every trip point, cams in sheet order, the lower edge of a window first. */
  static List<TripTarget> of(JobSheet sheet, Coordinate coordinate) {
    Targets targets = new Targets(sheet, coordinate);
    List<TripTarget> all = new ArrayList<>();
    for (Cam cam : sheet.cams()) {
      all.addAll(targets.of(cam));
    }
    return List.copyOf(all);
  }

  private List<TripTarget> of(Cam cam) {
    if (cam.trips().isEmpty()) {
      return limitEnd(cam)
          .map(end -> List.of(target(cam, Edge.ONLY, backoff(end))))
          .orElse(List.of());
    }
    if (!cam.isWindow()) {
      return List.of(target(cam, Edge.ONLY, cam.trips().get(0)));
    }
    double span = coordinate.span().map(Estimate::value).orElse(sheetSpan().orElse(100));
    TripPlan first = cam.trips().get(0);
    TripPlan second = cam.trips().get(1);
    boolean rising = first.positionTurns(span) <= second.positionTurns(span);
    return List.of(
        target(cam, Edge.LOWER, rising ? first : second),
        target(cam, Edge.UPPER, rising ? second : first));
  }

  private Optional<End> limitEnd(Cam cam) {
    return sheet.contacts().stream()
        .filter(c -> c.cam().equals(cam.name()))
        .map(Contact::role)
        .flatMap(role -> role.limitOf().stream())
        .findFirst();
  }

  private TripPlan backoff(End end) {
    EndSetting setting = sheet.end(end);
    return new TripPlan(end, setting.backoffTurns(), setting.toleranceTurns(), TripPlan.Unit.TURNS);
  }

  private TripTarget target(Cam cam, Edge edge, TripPlan plan) {
    return new TripTarget(cam.name(), edge, plan, position(plan), tolerance(plan), nominal(plan));
  }

  private Optional<Estimate> position(TripPlan plan) {
    Optional<Estimate> stop = stop(coordinate, sheet, plan.from());
    if (stop.isPresent()) {
      int away = plan.from() == End.CLOSED ? 1 : -1;
      return distance(plan).map(d -> stop.orElseThrow().plus(d.times(away)));
    }
    return plan.unit() == TripPlan.Unit.PERCENT ? fromOtherStop(plan) : Optional.empty();
  }

  private Optional<Estimate> fromOtherStop(TripPlan plan) {
    Optional<Estimate> other = stop(coordinate, sheet, plan.from().other());
    OptionalDouble tolerance = sheet.travel().spanToleranceTurns();
    if (other.isEmpty() || sheetSpan().isEmpty() || tolerance.isEmpty()) {
      return Optional.empty();
    }
    double share = 1 - plan.distance() / 100;
    int away = plan.from() == End.OPEN ? 1 : -1;
    Part span =
        Part.common(
            PartNames.SHEET_SPAN, TypeB.rectangular(tolerance.getAsDouble()), Shape.RECTANGULAR);
    Estimate expected = Estimate.of(sheetSpan().getAsDouble(), span);
    return Optional.of(other.orElseThrow().plus(expected.times(away * share)));
  }

  private Optional<Estimate> distance(TripPlan plan) {
    if (plan.unit() == TripPlan.Unit.TURNS) {
      return Optional.of(Estimate.exact(plan.distance()));
    }
    double share = plan.distance() / 100;
    Optional<Estimate> measured = coordinate.span().map(span -> span.times(share));
    return measured.isPresent()
        ? measured
        : sheetSpan().stream().mapToObj(span -> Estimate.exact(span * share)).findFirst();
  }

  private OptionalDouble tolerance(TripPlan plan) {
    if (plan.unit() == TripPlan.Unit.TURNS) {
      return OptionalDouble.of(plan.tolerance());
    }
    OptionalDouble span = span();
    return span.isPresent()
        ? OptionalDouble.of(plan.toleranceTurns(span.getAsDouble()))
        : OptionalDouble.empty();
  }

  private OptionalDouble nominal(TripPlan plan) {
    OptionalDouble span = span();
    if (span.isPresent()) {
      return OptionalDouble.of(plan.positionTurns(span.getAsDouble()));
    }
    Optional<Estimate> found = position(plan);
    return found.isPresent()
        ? OptionalDouble.of(found.orElseThrow().value())
        : OptionalDouble.empty();
  }

  private OptionalDouble span() {
    return coordinate.span().isPresent()
        ? OptionalDouble.of(coordinate.span().orElseThrow().value())
        : sheetSpan();
  }

  private OptionalDouble sheetSpan() {
    return sheet.travel().spanTurns();
  }

  /** x of a hard stop; empty where it is not known. The stop's own uncertainty is in every x. */
  static Optional<Estimate> stop(Coordinate coordinate, JobSheet sheet, End end) {
    if (end == End.CLOSED) {
      return coordinate.closedStop().map(stop -> Estimate.exact(0));
    }
    if (coordinate.openStop().isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        coordinate.span().orElse(Estimate.exact(sheet.travel().spanTurns().orElse(0))));
  }
}
