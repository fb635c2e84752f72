package tripline.verdict;

import tripline.assess.AsBuilt;
import tripline.assess.ContactJudgement;
import tripline.job.Contact;
import tripline.job.Direction;
import tripline.result.Result.ContactResult;

/** Contacts as the result writes them. */
final class ContactResults {
  private ContactResults() {}

  static ContactResult of(ContactJudgement judged, AsBuilt asBuilt) {
    Contact contact = judged.contact();
    return new ContactResult(
        contact.name(),
        contact.role().word(),
        contact.cam(),
        judged.decision(),
        judged.asCharted(),
        judged.seen().exercised(),
        Figures.number(judged.worstSettleS()),
        asBuilt.closed(judged.seen(), Direction.OPENING),
        asBuilt.closed(judged.seen(), Direction.CLOSING));
  }
}
