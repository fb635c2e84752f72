package tripline.finding;

import tripline.assess.Amounts;
import tripline.assess.Assessment;
import tripline.assess.ContactJudgement;
import tripline.job.Contact;

/** {@code contact-chatter}: settles more slowly than {@value #LIMIT_S} s for certain. */
final class ContactChatter implements Look {
  /** <em>Common practice</em>: a sound snap or cam contact has stopped bouncing well before. */
  static final double LIMIT_S = 0.020;

  @Override
  public void look(Assessment assessment, FindingSink sink) {
    for (ContactJudgement judged : assessment.judged().contacts()) {
      if (judged.chatterS() > LIMIT_S) {
        sink.onFinding(finding(judged));
      }
    }
  }

  private static Finding finding(ContactJudgement judged) {
    Contact contact = judged.contact();
    return Draft.of(Code.CONTACT_CHATTER)
        .contact(contact)
        .evidence("settle_s", judged.worstSettleS())
        .evidence("settle_certain_s", judged.chatterS())
        .evidence("limit_s", LIMIT_S)
        .says(
            String.format(
                "%s took %s to settle, more than %s.",
                Text.capital(Text.contact(contact)),
                Amounts.seconds(judged.worstSettleS().orElse(0)),
                Amounts.seconds(LIMIT_S)),
            "Check the contact block and its seat; replace it if it is worn.");
  }
}
