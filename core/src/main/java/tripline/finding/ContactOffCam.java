package tripline.finding;

import tripline.assess.Amounts;
import tripline.assess.Assessment;
import tripline.assess.ContactJudgement;
import tripline.job.Contact;
import tripline.measure.Estimate;

/**
 * {@code contact-off-cam}: it changes elsewhere than the contact its cam is set by, by more than
 * the cam's tolerance.
 */
final class ContactOffCam implements Look {
  @Override
  public void look(Assessment assessment, FindingSink sink) {
    for (ContactJudgement judged : assessment.judged().contacts()) {
      judged.offCam().ifPresent(off -> sink.onFinding(finding(judged.contact(), off)));
    }
  }

  private static Finding finding(Contact contact, Estimate off) {
    return Draft.of(Code.CONTACT_OFF_CAM)
        .contact(contact)
        .evidence("distance", off)
        .says(
            String.format(
                "%s changes %s toward %s of where cam %s trips its other contacts.",
                Text.capital(Text.contact(contact)),
                Amounts.turns(Math.abs(off.value())),
                off.value() > 0 ? "open" : "closed",
                contact.cam()),
            "Check the contact block's seat and lever, and that the sheet names the right cam.");
  }
}
