package tripline.harness.host;

import java.util.List;
import java.util.NavigableMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import tripline.link.Answer;
import tripline.link.BodySink;
import tripline.link.ChannelDescription;
import tripline.link.ChannelKind;
import tripline.link.Encoding;
import tripline.link.Identity;
import tripline.link.LinkCounters;
import tripline.link.LinkDecoder;
import tripline.link.LinkMessage;
import tripline.link.LoggerState;
import tripline.link.MessageType;
import tripline.link.Status;

/**
 * What is received from one logger: kept, decoded, handed on, and what the logger says of itself
 * remembered. Goes on over as many lines as it takes, so that the sequence tells what was missed in
 * between.
 */
public final class Incoming {
  private final ByteKeeper keeper;
  private final BodySink bodies;
  private final LinkDecoder decoder;
  private final NavigableMap<Integer, ChannelDescription> channels = new TreeMap<>();
  private @Nullable Identity identity;
  private @Nullable Status status;
  private @Nullable Answer answer;
  private long bytes;
  private long messages;
  private long descriptions;

  /**
   * @param keeper gets the bytes first
   * @param bodies then gets their messages
   */
  public Incoming(ByteKeeper keeper, BodySink bodies) {
    this.keeper = keeper;
    this.bodies = bodies;
    this.decoder =
        new LinkDecoder(
            new BodySink() {
              @Override
              public void onBody(MessageType type, byte[] body, int length) {
                take(type, body, length);
              }

              @Override
              public void onSetAside(Cause cause, byte[] body, int length) {
                messages++;
                bodies.onSetAside(cause, body, length);
              }
            });
  }

  /** Takes the next bytes. */
  public void accept(byte[] from, int length) {
    bytes += length;
    keeper.onBytes(from, length);
    decoder.accept(from, 0, length);
  }

  /** The line is closed: what is pending will not be completed (SPEC D5). */
  public void lineClosed() {
    decoder.finish();
    answer = null;
  }

  private void take(MessageType type, byte[] body, int length) {
    messages++;
    switch (type) {
      case IDENTITY -> onIdentity((Identity) LinkMessage.read(type, body));
      case CHANNEL -> onChannel((ChannelDescription) LinkMessage.read(type, body));
      case STATUS -> status = (Status) LinkMessage.read(type, body);
      case ANSWER -> answer = (Answer) LinkMessage.read(type, body);
      default -> {}
    }
    bodies.onBody(type, body, length);
  }

  private void onIdentity(Identity said) {
    descriptions++;
    if (!said.equals(identity)) {
      channels.clear();
    }
    identity = said;
  }

  private void onChannel(ChannelDescription said) {
    descriptions++;
    if (said.kind() != ChannelKind.OTHER) {
      channels.put(said.kind() == ChannelKind.POSITION ? -1 : said.number(), said);
    }
  }

  /** The logger, as it last said. */
  public @Nullable Identity identity() {
    return identity;
  }

  /** Its last status. */
  public @Nullable Status status() {
    return status;
  }

  /** Whether its last status says that it samples. */
  public boolean running() {
    return status != null && status.state() == LoggerState.RUNNING;
  }

  /** Its channels as described so far: position, then contacts by number. */
  public List<ChannelDescription> channels() {
    return List.copyOf(channels.values());
  }

  /** Whether it has described itself and every channel (SPEC H9). */
  public boolean described() {
    Identity said = identity;
    return said != null && channels.size() >= said.positions() + said.contacts();
  }

  /** The encoding it talks in; frames until a message came. */
  public Encoding encoding() {
    @Nullable Encoding heard = decoder.encoding();
    return heard == null ? Encoding.FRAMES : heard;
  }

  /** Bytes received. */
  public long bytes() {
    return bytes;
  }

  /** Whole messages received, those set aside included. */
  public long messages() {
    return messages;
  }

  /** What became of the bytes. */
  public LinkCounters counters() {
    return decoder.counters();
  }

  /** Messages by which it describes itself, for a host that waits for the end of them. */
  long descriptions() {
    return descriptions;
  }

  /**
   * The last answer to a command of this type and sequence, or null; taken away if there is one.
   */
  @Nullable Answer answerTo(MessageType command, int sequence) {
    @Nullable Answer last = answer;
    boolean fits =
        last != null
            && last.to() == sequence
            && (last.commandCode() == command.code() || last.commandCode() == 0);
    if (!fits) {
      return null;
    }
    answer = null;
    return last;
  }
}
