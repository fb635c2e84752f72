package tripline.travel;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tripline.job.Contact;
import tripline.job.End;
import tripline.job.JobSheet;
import tripline.sample.Channels;

/** What each channel of a job sheet carries; channel indexes are those of the sheet. */
public final class SheetChannels {
  private final Channels channels;
  private final Map<Integer, Contact> contacts = new HashMap<>();
  private final JobSheet sheet;

  /** Looks the sheet's contacts up by channel. */
  public SheetChannels(JobSheet sheet) {
    this.sheet = sheet;
    channels = sheet.channels();
    for (Contact contact : sheet.contacts()) {
      contacts.putIfAbsent(channels.indexOf(contact.channel()), contact);
    }
  }

  /** The contact on a channel; empty for torque and motor channels. */
  public Optional<Contact> contact(int channel) {
    return Optional.ofNullable(contacts.get(channel));
  }

  /** Channel of a contact, by its name. */
  public Optional<Integer> channelOf(String contactName) {
    return contacts.entrySet().stream()
        .filter(e -> e.getValue().name().equals(contactName))
        .map(Map.Entry::getKey)
        .findFirst();
  }

  /** Channels of the contacts that are to stop the motor at an end, in sheet order. */
  public List<Integer> limits(End end) {
    return sheet.contacts().stream()
        .filter(c -> c.role().limitOf().equals(Optional.of(end)))
        .map(c -> channels.indexOf(c.channel()))
        .toList();
  }

  /** Channel of the torque contact that opens while running toward an end. */
  public Optional<Integer> torque(End end) {
    return sheet.torque(end).map(channels::indexOf);
  }

  /** Channel of the contactor that drives toward an end. */
  public Optional<Integer> motor(End end) {
    return sheet.motor(end).map(channels::indexOf);
  }

  /** Index in the sheet of a channel of a trace, or -1 where the sheet does not ask for it. */
  int fromTrace(Channels traced, int channel) {
    return channels.indexOf(traced.contacts().get(channel));
  }
}
