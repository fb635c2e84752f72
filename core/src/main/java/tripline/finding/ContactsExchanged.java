package tripline.finding;

import java.util.List;
import java.util.Optional;
import tripline.assess.Assessment;
import tripline.assess.Exchange;
import tripline.job.Contact;
import tripline.job.End;

/** {@code contacts-exchanged}: two channels behave as each other's line of the chart. */
final class ContactsExchanged implements Look {
  private static final String WHERE =
      "Find out where: at the logger's leads, or at the terminals, where control and"
          + " indication are exchanged too. Put it right and record again.";

  private static final String MIRRORED =
      "Both ends look exchanged: position.turns_per_unit is positive where the reading rises while"
          + " the valve opens, else negative; see to that first. ";

  @Override
  public void look(Assessment assessment, FindingSink sink) {
    List<Contact> contacts = assessment.sheet().contacts();
    List<Exchange> all = assessment.judged().exchanges();
    boolean mirrored = all.size() > 1 && all.stream().anyMatch(e -> isOfBothEnds(e, contacts));
    String action = mirrored ? MIRRORED + WHERE : WHERE;
    for (Exchange exchange : all) {
      Contact first = contacts.get(exchange.first());
      Contact second = contacts.get(exchange.second());
      sink.onFinding(
          Draft.of(Code.CONTACTS_EXCHANGED)
              .contact(first)
              .contact(second)
              .evidence("channel_first", first.channel())
              .evidence("channel_second", second.channel())
              .says(
                  String.format(
                      "Channels %s and %s are exchanged: %s behaves exactly as %s is charted, and"
                          + " the other way round.",
                      first.channel(), second.channel(), Text.contact(first), Text.contact(second)),
                  action));
      action = WHERE;
    }
  }

  /** As if the valve had been looked at from its other end. */
  private static boolean isOfBothEnds(Exchange exchange, List<Contact> contacts) {
    Optional<End> first = contacts.get(exchange.first()).role().limitOf();
    Optional<End> second = contacts.get(exchange.second()).role().limitOf();
    return first.isPresent() && second.isPresent() && !first.equals(second);
  }
}
