package tripline.finding;

import java.util.List;
import tripline.assess.Assessment;
import tripline.assess.Exchange;
import tripline.job.Contact;

/** {@code contacts-exchanged}: two channels behave as each other's line of the chart. */
final class ContactsExchanged implements Look {
  @Override
  public void look(Assessment assessment, FindingSink sink) {
    List<Contact> contacts = assessment.sheet().contacts();
    for (Exchange exchange : assessment.judged().exchanges()) {
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
                  "Find out where: at the logger's leads, or at the terminals, where control and"
                      + " indication are exchanged too. Put it right and record again."));
    }
  }
}
