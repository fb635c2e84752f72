package tripline.verdict;

import java.util.Locale;
import java.util.Optional;
import tripline.develop.Trip;
import tripline.job.Contact;
import tripline.job.Direction;
import tripline.job.JobSheet;
import tripline.reduce.Change;
import tripline.result.Result.ChangeResult;

/** Settled changes as the result writes them. */
final class ChangeResults {
  private ChangeResults() {}

  static ChangeResult of(Trip trip, JobSheet sheet) {
    Change change = trip.change();
    Optional<Contact> contact =
        trip.channel() < sheet.contacts().size()
            ? Optional.of(sheet.contacts().get(trip.channel()))
            : Optional.empty();
    return new ChangeResult(
        trip.recording(),
        trip.stroke() < 0 ? null : trip.stroke(),
        trip.setting(),
        contact.map(Contact::name).orElseGet(() -> auxiliary(sheet, trip.channel())),
        contact.map(Contact::cam).orElse(null),
        trip.to().name().toLowerCase(Locale.ROOT),
        trip.direction().map(Direction::word).orElse(null),
        trip.atRest(),
        trip.timeS(),
        Figures.value(trip.reading()),
        Figures.u(trip.reading()),
        Figures.value(trip.x()),
        Figures.u(trip.x()),
        change.bounces(),
        (change.settledNs() - change.afterNs()) * 1e-9,
        Figures.measured(trip.x()));
  }

  private static String auxiliary(JobSheet sheet, int channel) {
    String name = sheet.channels().contacts().get(channel);
    if (sheet.torqueClosing().filter(name::equals).isPresent()) {
      return "torque-closing";
    }
    if (sheet.torqueOpening().filter(name::equals).isPresent()) {
      return "torque-opening";
    }
    return sheet.motorClosing().filter(name::equals).isPresent()
        ? "motor-closing"
        : "motor-opening";
  }
}
