package tripline.harness.report;

import java.util.List;
import tripline.job.Cam;
import tripline.job.Contact;
import tripline.job.End;
import tripline.job.JobSheet;
import tripline.job.TripPlan;
import tripline.result.Result.Stretch;

/** What a sheet intends, put in travel for a given span. */
public final class IntendedChart {
  private IntendedChart() {}

  /** The trip points of all cams. */
  static List<PlannedTrip> trips(JobSheet sheet, double span) {
    return sheet.cams().stream().flatMap(cam -> trips(sheet, cam, span).stream()).toList();
  }

  /** A cam's trip points; where it states none, the backoff of the end whose limit it carries. */
  public static List<PlannedTrip> trips(JobSheet sheet, Cam cam, double span) {
    return plans(sheet, cam).stream()
        .map(t -> new PlannedTrip(t.positionTurns(span), t.toleranceTurns(span)))
        .toList();
  }

  /** A cam's trip points as the sheet states or implies them. */
  public static List<TripPlan> plans(JobSheet sheet, Cam cam) {
    if (!cam.trips().isEmpty()) {
      return cam.trips();
    }
    return sheet.contacts().stream()
        .filter(c -> c.cam().equals(cam.name()))
        .flatMap(c -> c.role().limitOf().stream())
        .limit(1)
        .map(end -> backoff(sheet, end))
        .toList();
  }

  private static TripPlan backoff(JobSheet sheet, End end) {
    return new TripPlan(
        end, sheet.end(end).backoffTurns(), sheet.end(end).toleranceTurns(), TripPlan.Unit.TURNS);
  }

  /** Where a contact is charted closed, from the closed stop to the open stop. */
  public static List<Stretch> closed(JobSheet sheet, Contact contact, double span) {
    List<PlannedTrip> trips =
        sheet.cams().stream()
            .filter(c -> c.name().equals(contact.cam()))
            .findFirst()
            .map(cam -> trips(sheet, cam, span))
            .orElse(List.of());
    if (trips.isEmpty()) {
      return List.of();
    }
    double first = trips.get(0).x();
    double last = trips.get(trips.size() - 1).x();
    return switch (contact.closed()) {
      case OPEN_SIDE -> List.of(new Stretch(first, span));
      case CLOSED_SIDE -> List.of(new Stretch(0, first));
      case INSIDE -> List.of(new Stretch(first, last));
      case OUTSIDE -> List.of(new Stretch(0, first), new Stretch(last, span));
    };
  }
}
