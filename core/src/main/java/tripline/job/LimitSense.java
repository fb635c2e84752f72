package tripline.job;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** Limit contacts: one an end, on a cam of that end, with one target. */
final class LimitSense {
  private LimitSense() {}

  static void check(JobSheet sheet, Remarks remarks) {
    for (End end : End.values()) {
      List<Integer> limits = limits(sheet, end);
      for (int i = 1; i < limits.size(); i++) {
        remarks.error(
            Remarks.contact(limits.get(i), "role"),
            "%s is the second contact with role %s, expected one"
                .formatted(
                    sheet.contacts().get(limits.get(i)).name(),
                    sheet.contacts().get(limits.get(i)).role().word()),
            Remarks.contact(limits.get(0), "role"));
      }
      limits.forEach(index -> cam(sheet, index, end, remarks));
    }
  }

  /** Indexes of the limit contacts of an end. */
  static List<Integer> limits(JobSheet sheet, End end) {
    List<Integer> found = new ArrayList<>();
    for (int i = 0; i < sheet.contacts().size(); i++) {
      if (sheet.contacts().get(i).role().limitOf().filter(end::equals).isPresent()) {
        found.add(i);
      }
    }
    return found;
  }

  private static void cam(JobSheet sheet, int index, End end, Remarks remarks) {
    Contact contact = sheet.contacts().get(index);
    int number = CamSense.camOf(sheet, contact);
    if (number < 0) {
      return;
    }
    Cam cam = sheet.cams().get(number);
    String[] rests = {Remarks.contact(index, "cam"), "cam[*].name", Remarks.cam(number, "trip")};
    boolean other =
        sheet.contacts().stream()
            .anyMatch(
                c ->
                    c.cam().equals(cam.name())
                        && c.role().limitOf().filter(end.other()::equals).isPresent());
    if (other && end == End.OPEN) {
      remarks.error(
          Remarks.contact(index, "cam"),
          "cam \"%s\" carries both limit contacts, expected a cam for each end"
              .formatted(cam.name()),
          "contact[*].role",
          "contact[*].cam");
    } else if (cam.isWindow()) {
      remarks.error(
          Remarks.contact(index, "cam"),
          "%s contact on cam \"%s\", which has two trip points, expected a cam with one"
              .formatted(contact.role().word(), cam.name()),
          rests);
    } else if (!cam.trips().isEmpty() && !other) {
      target(sheet, number, end, index, remarks);
    }
  }

  private static void target(JobSheet sheet, int number, End end, int contact, Remarks remarks) {
    TripPlan trip = sheet.cams().get(number).trips().get(0);
    String name = sheet.cams().get(number).name();
    String path = Remarks.cam(number, "trip");
    String[] rests = {
      Remarks.contact(contact, "role"),
      Remarks.contact(contact, "cam"),
      path + ".turns",
      path + ".percent",
      path + ".tolerance",
      "ends." + end.word(),
      "travel.span"
    };
    OptionalDouble span = sheet.travel().spanTurns();
    if (trip.from() != end) {
      remarks.doubt(
          path + ".from",
          "cam \"%s\" carries the %s contact, and is not measured from the %s end"
              .formatted(name, sheet.contacts().get(contact).role().word(), end.word()),
          rests);
    } else if (trip.unit() == TripPlan.Unit.TURNS || span.isPresent()) {
      double distance = trip.distanceTurns(span.orElse(0));
      double apart = Math.abs(distance - sheet.end(end).backoffTurns());
      double bands = trip.toleranceTurns(span.orElse(0)) + sheet.end(end).toleranceTurns();
      String both =
          "cam \"%s\" is to trip %s turns from the %s stop, and ends.%s asks for a backoff of %s"
              .formatted(
                  name,
                  Remarks.figure(distance),
                  end.word(),
                  end.word(),
                  Remarks.figure(sheet.end(end).backoffTurns()));
      if (distance >= span.orElse(Double.MAX_VALUE)
          || sheet.end(end).backoffTurns() >= span.orElse(Double.MAX_VALUE)) {
        return;
      }
      if (apart > bands) {
        remarks.doubt(
            path, both + ": two targets out of each other's tolerance for one contact", rests);
      } else if (apart > 1e-9) {
        remarks.doubt(path, both + ": two targets for one contact", rests);
      }
    }
  }
}
