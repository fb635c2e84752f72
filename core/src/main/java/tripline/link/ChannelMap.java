package tripline.link;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tripline.sample.Channels;

/** What the logger's channels are, and which of them the job asks for. */
final class ChannelMap {
  private static final int CONTACTS = 64;

  private final Channels asked;
  private final @Nullable ChannelDescription[] contacts =
      new @Nullable ChannelDescription[CONTACTS];
  private final int[] bitOf = new int[CONTACTS];
  private @Nullable ChannelDescription position;
  private int contactsDue;
  private int positionsDue;
  private long inverted;
  private boolean inPlace;
  private long askedMask;

  ChannelMap(Channels asked) {
    this.asked = asked;
    Arrays.fill(bitOf, -1);
  }

  /** Forgets every channel: a logger of so many is described anew. */
  void expect(Identity identity) {
    Arrays.fill(contacts, null);
    Arrays.fill(bitOf, -1);
    position = null;
    inverted = 0;
    contactsDue = identity.contacts();
    positionsDue = identity.positions();
  }

  void describe(ChannelDescription channel) {
    if (channel.kind() == ChannelKind.POSITION) {
      position = channel;
    } else if (channel.kind() == ChannelKind.CONTACT) {
      int number = channel.number();
      contacts[number] = channel;
      bitOf[number] = asked.indexOf(channel.name());
      inverted = (inverted & ~(1L << number)) | ((1L - channel.closedLevel()) << number);
      place();
    }
  }

  private void place() {
    inPlace = true;
    askedMask = 0;
    for (int i = 0; i < CONTACTS; i++) {
      inPlace &= bitOf[i] < 0 || bitOf[i] == i;
      askedMask |= bitOf[i] < 0 ? 0 : 1L << i;
    }
  }

  /** Whether every channel that the identity promised has been described. */
  boolean complete() {
    if (positionsDue > 0 && position == null) {
      return false;
    }
    for (int i = 0; i < contactsDue; i++) {
      if (contacts[i] == null) {
        return false;
      }
    }
    return true;
  }

  List<ChannelDescription> channels() {
    List<ChannelDescription> all = new ArrayList<>();
    if (position != null) {
      all.add(position);
    }
    for (ChannelDescription contact : contacts) {
      if (contact != null) {
        all.add(contact);
      }
    }
    return all;
  }

  @Nullable ChannelDescription position() {
    return position;
  }

  @Nullable ChannelDescription contact(int number) {
    return contacts[number];
  }

  /** The job's bit of a contact, or -1 if it does not ask for it. */
  int bitOf(int number) {
    return bitOf[number];
  }

  /** A mask by contact number as a mask by the job's channels; other contacts fall out. */
  long place(long byNumber) {
    long rest = byNumber & askedMask;
    if (inPlace) {
      return rest;
    }
    long placed = 0;
    for (; rest != 0; rest &= rest - 1) {
      placed |= 1L << bitOf[Long.numberOfTrailingZeros(rest)];
    }
    return placed;
  }

  /** Closed contacts of a mask of levels, by the job's channels. */
  long closed(long levels) {
    return place(levels ^ inverted);
  }
}
