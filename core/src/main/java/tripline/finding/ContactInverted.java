package tripline.finding;

import tripline.assess.Assessment;
import tripline.assess.ContactJudgement;
import tripline.assess.ContactSeen;
import tripline.job.Contact;

/** {@code contact-inverted}: it changes where its cam does, in the opposite sense. */
final class ContactInverted implements Look {
  @Override
  public void look(Assessment assessment, FindingSink sink) {
    for (ContactJudgement judged : assessment.judged().contacts()) {
      if (judged.seen().sense() == ContactSeen.Sense.OPPOSED) {
        sink.onFinding(finding(judged));
      }
    }
  }

  private static Finding finding(ContactJudgement judged) {
    Contact contact = judged.contact();
    long changes = judged.seen().observed().crossings().count();
    return Draft.of(Code.CONTACT_INVERTED)
        .contact(contact)
        .evidence("changes", changes)
        .evidence("charted_closed", contact.closed().word())
        .says(
            String.format(
                "%s changes with its cam, but in the opposite sense: charted closed on %s, seen open"
                    + " there in %d changes.",
                Text.capital(Text.contact(contact)), contact.closed().word(), changes),
            "Check whether a break contact is wired where a make contact is charted, or the logger"
                + " reads it inverted.");
  }
}
