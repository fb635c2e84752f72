package tripline.finding;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import tripline.assess.Amounts;
import tripline.assess.Assessment;
import tripline.assess.Away;
import tripline.assess.ContactJudgement;
import tripline.job.Contact;

/** {@code contact-intermittent}: changes of state away from any trip point of the contact. */
final class ContactIntermittent implements Look {
  @Override
  public void look(Assessment assessment, FindingSink sink) {
    for (ContactJudgement judged : assessment.judged().contacts()) {
      if (!judged.away().isEmpty()) {
        sink.onFinding(finding(judged.contact(), judged.away()));
      }
    }
  }

  private static Finding finding(Contact contact, List<Away> away) {
    Away first = away.get(0);
    OptionalDouble longest = away.stream().flatMapToDouble(a -> a.lengthS().stream()).max();
    String where =
        first.x().isPresent() ? " at " + Amounts.turns(first.x().getAsDouble()) + " of travel" : "";
    return Draft.of(Code.CONTACT_INTERMITTENT)
        .contact(contact)
        .at(first.recording(), first.timeS())
        .stroke(first.stroke())
        .evidence("times", away.size())
        .evidence("longest_s", longest)
        .evidence("position", first.x())
        .says(
            String.format(
                Locale.ROOT,
                "%s changed state away from its trip point %s%s, first%s, %s.",
                Text.capital(Text.contact(contact)),
                Text.times(away.size()),
                longest.isPresent() ? ", for up to " + Amounts.seconds(longest.getAsDouble()) : "",
                where,
                Text.when(first.recording(), first.timeS())),
            "Look for a loose terminal or lead, then a worn contact; repeat the stroke.");
  }
}
