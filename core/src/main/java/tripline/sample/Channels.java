package tripline.sample;

import java.util.HashSet;
import java.util.List;

/**
 * The contact channels a job asks for, in the order of their bits.
 *
 * @param contacts channel names, distinct, at most {@value #MOST_CONTACTS}
 */
public record Channels(List<String> contacts) {
  /** One bit of a {@code long} a channel. */
  public static final int MOST_CONTACTS = 64;

  /**
   * @throws IllegalArgumentException if there are more than {@value #MOST_CONTACTS} names or one
   *     stands twice
   */
  public Channels {
    contacts = List.copyOf(contacts);
    if (contacts.size() > MOST_CONTACTS) {
      throw new IllegalArgumentException(contacts.size() + " channels, at most " + MOST_CONTACTS);
    }
    if (new HashSet<>(contacts).size() != contacts.size()) {
      throw new IllegalArgumentException("a channel name stands twice in " + contacts);
    }
  }

  /** Index of a channel, or -1. */
  public int indexOf(String name) {
    return contacts.indexOf(name);
  }

  /** How many channels. */
  public int size() {
    return contacts.size();
  }
}
