package tripline.finding;

import java.util.List;
import tripline.assess.Assessment;
import tripline.assess.ContactJudgement;
import tripline.assess.Missed;
import tripline.job.Contact;
import tripline.sample.ContactState;

/** {@code contact-stuck-open}, {@code contact-stuck-closed}: its cam moved its mates, not it. */
final class ContactStuck implements Look {
  @Override
  public void look(Assessment assessment, FindingSink sink) {
    for (ContactJudgement judged : assessment.judged().contacts()) {
      List<Missed> alone =
          judged.missed().stream().filter(m -> m.by() == Missed.By.CONTACT).toList();
      if (!alone.isEmpty()) {
        sink.onFinding(finding(judged, alone));
      }
    }
  }

  private static Finding finding(ContactJudgement judged, List<Missed> alone) {
    Contact contact = judged.contact();
    long open = alone.stream().filter(m -> m.stayed() == ContactState.OPEN).count();
    boolean stuckOpen = 2 * open > alone.size();
    long changed =
        judged.seen().observed().passages().stream().filter(p -> !p.changes().isEmpty()).count();
    String message =
        String.format(
            "%s stayed %s while others of cam %s changed, in %d of %d strokes past it.",
            Text.capital(Text.contact(contact)),
            stuckOpen ? "open" : "closed",
            contact.cam(),
            alone.size(),
            alone.size() + changed);
    return Draft.of(stuckOpen ? Code.CONTACT_STUCK_OPEN : Code.CONTACT_STUCK_CLOSED)
        .contact(contact)
        .stroke(alone.get(0).stroke())
        .evidence("strokes_missed", alone.size())
        .evidence("strokes_changed", changed)
        .says(
            message,
            stuckOpen
                ? "Check the lead and the terminal first, then the contact block; replace it if it"
                    + " does not make."
                : "Check for a bridged terminal first, then the contact block; replace it if it is"
                    + " welded.");
  }
}
