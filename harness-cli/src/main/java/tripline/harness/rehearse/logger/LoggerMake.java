package tripline.harness.rehearse.logger;

import java.util.List;
import tripline.link.Ability;
import tripline.link.ChannelDescription;
import tripline.link.ChannelKind;
import tripline.link.Encoding;
import tripline.link.Identity;

/**
 * What a logger is, as it says itself.
 *
 * @param identity who it is; its session is that of the first power-up
 * @param channels positions first, then contacts by number
 * @param talks the encoding it begins in
 */
public record LoggerMake(Identity identity, List<ChannelDescription> channels, Encoding talks) {
  public LoggerMake {
    channels = List.copyOf(channels);
  }

  /** All abilities there are. */
  public static long everything() {
    long bits = 0;
    for (Ability ability : Ability.values()) {
      bits |= ability.bit();
    }
    return bits;
  }

  /** Contacts reported in rows. */
  long sampled() {
    return contacts(true);
  }

  /** Contacts reported by edges, bit by bit. */
  long edged() {
    return contacts(false);
  }

  private long contacts(boolean inRows) {
    long mask = 0;
    for (ChannelDescription channel : channels) {
      boolean reported =
          switch (channel.reports()) {
            case SAMPLED -> inRows;
            case EDGES -> !inRows;
            case BOTH -> true;
          };
      mask |= channel.kind() == ChannelKind.CONTACT && reported ? 1L << channel.number() : 0;
    }
    return mask;
  }

  /** Contacts whose level 0 means closed. */
  long closedLow() {
    long mask = 0;
    for (ChannelDescription channel : channels) {
      boolean low = channel.kind() == ChannelKind.CONTACT && channel.closedLevel() == 0;
      mask |= low ? 1L << channel.number() : 0;
    }
    return mask;
  }
}
