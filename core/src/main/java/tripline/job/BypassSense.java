package tripline.job;

import java.util.OptionalDouble;

/** Torque bypass contacts: do they cover what they are asked to. */
final class BypassSense {
  private BypassSense() {}

  static void check(JobSheet sheet, Remarks remarks) {
    for (int i = 0; i < sheet.contacts().size(); i++) {
      Contact contact = sheet.contacts().get(i);
      boolean bypass =
          contact.role() == Role.BYPASS_OPENING || contact.role() == Role.BYPASS_CLOSING;
      if (contact.coversPercent().isEmpty()) {
        continue;
      }
      if (!bypass) {
        remarks.error(
            Remarks.contact(i, "covers"),
            "covers stands on a contact with role %s, expected bypass-opening or bypass-closing"
                .formatted(contact.role().word()),
            Remarks.contact(i, "role"));
      } else {
        covers(sheet, i, contact, remarks);
      }
    }
  }

  private static void covers(JobSheet sheet, int index, Contact contact, Remarks remarks) {
    End end = contact.role() == Role.BYPASS_OPENING ? End.CLOSED : End.OPEN;
    int cam = CamSense.camOf(sheet, contact);
    OptionalDouble span = sheet.travel().spanTurns();
    if (cam < 0 || sheet.cams().get(cam).isWindow() || span.isEmpty()) {
      return;
    }
    OptionalDouble reach = reach(sheet, cam, end, span.getAsDouble(), 0);
    OptionalDouble least = reach(sheet, cam, end, span.getAsDouble(), 1);
    if (reach.isEmpty() || least.isEmpty()) {
      return;
    }
    double covers = contact.coversPercent().getAsDouble();
    String charted =
        "covers asks for %s %% of span, and %s is charted closed for %s %% from the %s end"
            .formatted(
                Remarks.figure(covers),
                contact.name(),
                Remarks.figure(reach.getAsDouble()),
                end.word());
    String[] rests = {
      Remarks.contact(index, "cam"),
      Remarks.contact(index, "role"),
      "cam[*].name",
      Remarks.cam(cam, "trip.turns"),
      Remarks.cam(cam, "trip.percent"),
      Remarks.cam(cam, "trip.from"),
      Remarks.cam(cam, "trip.tolerance"),
      "travel.span"
    };
    if (reach.getAsDouble() < covers) {
      remarks.doubt(
          Remarks.contact(index, "covers"),
          charted + ": as charted, the bypass is too short",
          rests);
    } else if (least.getAsDouble() < covers) {
      remarks.doubt(
          Remarks.contact(index, "covers"),
          charted
              + ", %s %% at the edge of its tolerance: a cam in tolerance may still be short"
                  .formatted(Remarks.figure(least.getAsDouble())),
          rests);
    }
  }

  /** Per cent of span from an end to the trip point, this many tolerances short of its target. */
  private static OptionalDouble reach(
      JobSheet sheet, int cam, End end, double span, int tolerances) {
    if (sheet.cams().get(cam).trips().isEmpty()) {
      return sheet.contacts().stream()
          .filter(c -> c.cam().equals(sheet.cams().get(cam).name()))
          .flatMap(c -> c.role().limitOf().stream())
          .map(sheet::end)
          .mapToDouble(e -> (e.backoffTurns() - tolerances * e.toleranceTurns()) / span * 100)
          .findFirst();
    }
    TripPlan trip = sheet.cams().get(cam).trips().get(0);
    double x = trip.positionTurns(span);
    double distance = end == End.CLOSED ? x : span - x;
    return OptionalDouble.of((distance - tolerances * trip.toleranceTurns(span)) / span * 100);
  }
}
