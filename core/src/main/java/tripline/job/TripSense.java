package tripline.job;

import java.util.List;
import java.util.OptionalDouble;

/** Trip points against the span. */
final class TripSense {
  private TripSense() {}

  static void check(JobSheet sheet, Remarks remarks) {
    OptionalDouble span = sheet.travel().spanTurns();
    for (int i = 0; i < sheet.cams().size(); i++) {
      List<TripPlan> trips = sheet.cams().get(i).trips();
      for (int j = 0; j < trips.size(); j++) {
        String path = Remarks.trip(sheet, i, j);
        String name = sheet.cams().get(i).name();
        if (span.isPresent()) {
          within(trips.get(j), name, path, span.getAsDouble(), remarks);
        } else if (trips.get(j).unit() == TripPlan.Unit.PERCENT) {
          remarks.doubt(
              path,
              "cam \"%s\" is set in per cent, and no span is stated: it is judged only where both"
                      .formatted(name)
                  + " hard stops are touched",
              "travel.span");
        }
      }
    }
  }

  private static void within(TripPlan trip, String cam, String path, double span, Remarks remarks) {
    double distance = trip.distanceTurns(span);
    double tolerance = trip.toleranceTurns(span);
    String key = trip.unit() == TripPlan.Unit.TURNS ? ".turns" : ".percent";
    String[] rests = {path + ".from", path + ".tolerance", "travel.span"};
    if (distance > span) {
      remarks.error(
          path + key,
          "the trip point of cam \"%s\" is %s turns from the %s stop, outside the span,"
                  .formatted(cam, Remarks.figure(distance), trip.from().word())
              + " expected at most %s".formatted(Remarks.figure(span)),
          rests);
    } else if (distance - tolerance <= 0) {
      remarks.doubt(
          path + ".tolerance",
          "the tolerance of cam \"%s\" reaches the %s stop: a contact that changes on the stop"
                  .formatted(cam, trip.from().word())
              + " itself would be in tolerance",
          path + key,
          path + ".from");
    } else if (distance + tolerance >= span) {
      remarks.doubt(
          path + ".tolerance",
          "the tolerance of cam \"%s\" reaches the %s stop, the far end of the span"
              .formatted(cam, trip.from().other().word()),
          path + key,
          path + ".from",
          "travel.span");
    }
  }
}
