package tripline.job;

import java.util.OptionalDouble;

/** Position lamps: lit from their own end through mid-travel, dark at the other end. */
final class LampSense {
  private LampSense() {}

  static void check(JobSheet sheet, Remarks remarks) {
    boolean open = false;
    boolean closed = false;
    for (int i = 0; i < sheet.contacts().size(); i++) {
      Role role = sheet.contacts().get(i).role();
      open |= role == Role.LAMP_OPEN;
      closed |= role == Role.LAMP_CLOSED;
      if (role == Role.LAMP_OPEN || role == Role.LAMP_CLOSED) {
        midTravel(sheet, i, role, remarks);
      }
    }
    if (open != closed) {
      remarks.doubt(
          "contact",
          "only one of the two lamps is charted (%s): the other end cannot be told from a dead lamp"
              .formatted(open ? Role.LAMP_OPEN.word() : Role.LAMP_CLOSED.word()),
          "contact[*].role");
    }
  }

  private static void midTravel(JobSheet sheet, int index, Role role, Remarks remarks) {
    Contact contact = sheet.contacts().get(index);
    int cam = CamSense.camOf(sheet, contact);
    OptionalDouble span = sheet.travel().spanTurns();
    if (cam < 0 || sheet.cams().get(cam).trips().size() != 1) {
      return;
    }
    TripPlan trip = sheet.cams().get(cam).trips().get(0);
    End dark = role == Role.LAMP_OPEN ? End.CLOSED : End.OPEN;
    double share;
    if (trip.unit() == TripPlan.Unit.PERCENT) {
      share = trip.from() == dark ? trip.distance() : 100 - trip.distance();
    } else if (span.isPresent()) {
      double x = trip.positionTurns(span.getAsDouble()) / span.getAsDouble() * 100;
      share = dark == End.CLOSED ? x : 100 - x;
    } else {
      return;
    }
    if (share > 50) {
      remarks.doubt(
          Remarks.contact(index, "cam"),
          "%s (%s) is charted dark over %s %% of travel from the %s end: not lit in mid-travel"
              .formatted(contact.name(), role.word(), Remarks.figure(share), dark.word()),
          Remarks.contact(index, "role"),
          Remarks.contact(index, "closed"),
          Remarks.cam(cam, "trip"),
          "travel.span");
    }
  }
}
