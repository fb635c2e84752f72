package tripline.harness.jobfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import tripline.job.Contact;
import tripline.job.End;
import tripline.job.EndSetting;
import tripline.job.Seat;

/** {@code [ends.closed]} and {@code [ends.open]}. */
final class EndSection {
  private static final Map<String, Seat> SEATS =
      Words.inOrder("limit", Seat.LIMIT, "torque", Seat.TORQUE);
  private static final Range BACKOFF = Range.from(0, 1000, "turns");
  private static final Range TOLERANCE = Range.above(0, 1000, "turns");
  private static final Range STOP_U = Range.from(0, 10, "turns");

  /** Half a turn is the usual backoff (common practice), a fifth of it the tolerance. */
  private static final EndSetting USUAL = new EndSetting(Seat.LIMIT, 0.5, 0.1, 0.01);

  private EndSection() {}

  static EndSetting read(Section ends, End end, List<Contact> contacts, Notes notes) {
    Section section = ends.section(end.word(), "a table, [ends." + end.word() + "]");
    boolean limited =
        contacts.stream().anyMatch(c -> c.role().limitOf().filter(end::equals).isPresent());
    if (!section.isPresent() && limited) {
      notes.error(
          "ends." + end.word(),
          "a contact has role %s, and [ends.%s] is missing, expected the setting of that end"
              .formatted(end == End.CLOSED ? "limit-closing" : "limit-opening", end.word()));
    }
    if (limited && section.isPresent()) {
      assumed(section, end, notes);
    }
    EndSetting setting =
        new EndSetting(
            section.choice("seat", SEATS).orElse(USUAL.seat()),
            section.number("backoff", BACKOFF, USUAL.backoffTurns()),
            section.number("tolerance", TOLERANCE, USUAL.toleranceTurns()),
            section.number("stop_u", STOP_U, USUAL.stopUTurns()));
    section.close();
    return setting;
  }

  private static void assumed(Section section, End end, Notes notes) {
    List<String> assumed = new ArrayList<>();
    if (!section.has("seat")) {
      assumed.add("seat \"limit\"");
    }
    if (!section.has("backoff")) {
      assumed.add("backoff " + Values.shown(USUAL.backoffTurns()));
    }
    if (!section.has("tolerance")) {
      assumed.add("tolerance " + Values.shown(USUAL.toleranceTurns()));
    }
    if (!section.has("stop_u")) {
      assumed.add("stop_u " + Values.shown(USUAL.stopUTurns()));
    }
    if (!assumed.isEmpty()) {
      notes.assumed(
          "ends." + end.word(),
          "ends.%s is not stated in full, taken as usual: %s"
              .formatted(end.word(), String.join(", ", assumed)));
    }
  }
}
