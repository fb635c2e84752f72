package tripline.finding;

import java.util.Locale;
import java.util.Optional;
import tripline.assess.Assessment;
import tripline.assess.ContactJudgement;
import tripline.assess.ContactSeen;
import tripline.job.Contact;
import tripline.job.End;
import tripline.job.Role;
import tripline.measure.Conformity;
import tripline.measure.Decision;
import tripline.measure.Estimate;
import tripline.measure.Limits;
import tripline.travel.Coordinate;

/** {@code bypass-short}: the bypass opens before it has covered its share of travel. */
final class BypassShort implements Look {
  @Override
  public void look(Assessment assessment, FindingSink sink) {
    for (ContactJudgement judged : assessment.judged().contacts()) {
      Contact contact = judged.contact();
      if (contact.coversPercent().isPresent()
          && judged.seen().sense() == ContactSeen.Sense.AS_CHARTED) {
        double want = contact.coversPercent().getAsDouble();
        covered(assessment, judged)
            .filter(c -> Conformity.decide(c, Limits.atLeast(want)) == Decision.REJECT)
            .ifPresent(c -> sink.onFinding(finding(contact, c, want)));
      }
    }
  }

  /** Per cent of span from the end it bridges to where it opens while leaving that end. */
  private static Optional<Estimate> covered(Assessment assessment, ContactJudgement judged) {
    End end = judged.contact().role() == Role.BYPASS_CLOSING ? End.OPEN : End.CLOSED;
    Coordinate coordinate = assessment.development().coordinate();
    Optional<Estimate> measured = coordinate.span();
    double span =
        measured.map(Estimate::value).orElse(assessment.sheet().travel().spanTurns().orElse(0));
    Optional<Estimate> opens =
        judged.seen().tracks().stream()
            .findFirst()
            .flatMap(t -> judged.seen().place(t.edge(), end.other().approach()));
    if (span <= 0 || opens.isEmpty()) {
      return Optional.empty();
    }
    if (end == End.CLOSED) {
      return coordinate.closedStop().isPresent()
          ? opens.map(x -> x.times(100 / span))
          : Optional.empty();
    }
    Estimate stop = measured.orElse(Estimate.exact(span));
    return coordinate.openStop().isPresent()
        ? opens.map(x -> stop.minus(x).times(100 / span))
        : Optional.empty();
  }

  private static Finding finding(Contact contact, Estimate covered, double want) {
    return Draft.of(Code.BYPASS_SHORT)
        .contact(contact)
        .evidence("covers_percent", covered)
        .evidence("wanted_percent", want)
        .says(
            String.format(
                Locale.ROOT,
                "%s opens after %.2f %% of travel; it must bridge the torque contact for at least"
                    + " %.2f %%.",
                Text.capital(Text.contact(contact)),
                covered.value(),
                want),
            "Move its cam, or put the bypass on a cam that trips later: until then the motor may be"
                + " blocked by its own torque contact while it lifts the valve off the seat.");
  }
}
