package tripline.finding;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import tripline.assess.Amounts;
import tripline.assess.TripTarget;
import tripline.develop.Stroke;
import tripline.job.Contact;
import tripline.job.End;
import tripline.measure.Estimate;

/** Turns of phrase that several findings share. */
final class Text {
  private Text() {}

  /** {@code contact 21-22 (limit-closing)}. */
  static String contact(Contact contact) {
    return "contact " + contact.name() + " (" + contact.role().word() + ")";
  }

  /** {@code cam band (lower edge)}. */
  static String cam(TripTarget target) {
    return "cam " + target.cam() + target.edge().word().map(w -> " (" + w + " edge)").orElse("");
  }

  /** {@code while closing, 83.2 s into recording 1}. */
  static String when(Stroke stroke) {
    return String.format(
        Locale.ROOT,
        "while %s, %s into recording %d",
        stroke.direction().word(),
        Amounts.seconds(stroke.startS()),
        stroke.recording() + 1);
  }

  /** {@code 83.2 s into recording 1}. */
  static String when(int recording, double timeS) {
    return String.format(
        Locale.ROOT, "%s into recording %d", Amounts.seconds(timeS), recording + 1);
  }

  static String names(List<Contact> contacts) {
    return contacts.stream().map(Contact::name).collect(Collectors.joining(", "));
  }

  /** {@code 0.73 ± 0.03 turn}, the half-width holding 95 %. */
  static String turns(Estimate figure) {
    return Amounts.turns(figure.value(), figure.expanded95());
  }

  static String stop(End end) {
    return "the " + end.word() + " stop";
  }

  static String times(long count) {
    return count == 1 ? "once" : count == 2 ? "twice" : count + " times";
  }

  static String capital(String sentence) {
    return sentence.substring(0, 1).toUpperCase(Locale.ROOT) + sentence.substring(1);
  }
}
