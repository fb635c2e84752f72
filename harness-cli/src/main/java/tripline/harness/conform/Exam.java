package tripline.harness.conform;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import tripline.link.Ability;
import tripline.link.ChannelDescription;
import tripline.link.ChannelKind;
import tripline.link.Encoding;
import tripline.link.Identity;
import tripline.link.LoggerState;
import tripline.link.Reports;
import tripline.link.Status;

/** One examination under way: the two ends of the conversation, and what is known of the logger. */
final class Exam {
  private static final int FRAMES_BIT = 1;
  private static final int LINES_BIT = 2;

  private final Talker talker;
  private final Witness witness;
  private final Ledger ledger;
  private final List<Run> runs = new ArrayList<>();
  private final List<Integer> switches = new ArrayList<>();

  private long excusedDamage;
  private long excusedLost;

  Exam(Talker talker, Witness witness, Ledger ledger) {
    this.talker = talker;
    this.witness = witness;
    this.ledger = ledger;
  }

  Talker talker() {
    return talker;
  }

  Witness witness() {
    return witness;
  }

  Ledger ledger() {
    return ledger;
  }

  /** The logger, which has described itself. */
  Identity identity() {
    @Nullable Identity identity = witness.identity();
    if (identity == null) {
      throw new IllegalStateException("nobody has said who he is");
    }
    return identity;
  }

  boolean can(Ability ability) {
    return identity().can(ability);
  }

  boolean knows(Encoding encoding) {
    int bit = encoding == Encoding.FRAMES ? FRAMES_BIT : LINES_BIT;
    return (identity().encodings() & bit) != 0;
  }

  /** Damaged or malformed messages the logger says it has received. */
  long badReceived() {
    @Nullable Status status = witness.status();
    return status == null ? 0 : status.badReceived();
  }

  /** Contacts described so, bit by bit. */
  long contacts(Predicate<ChannelDescription> which) {
    long mask = 0;
    for (Heard heard : witness.heard()) {
      if (heard.message() instanceof ChannelDescription channel
          && channel.kind() == ChannelKind.CONTACT
          && which.test(channel)) {
        mask |= 1L << channel.number();
      }
    }
    return mask;
  }

  /** No mark and no edge came while it ran: can it send any? */
  void uneventful(Duty duty) {
    boolean could =
        can(Ability.PLACE)
            || can(Ability.BUTTON)
            || contacts(c -> c.reports() != Reports.SAMPLED) != 0;
    if (could) {
      ledger.notSeen(duty, "neither a mark nor an edge came while it ran");
    } else {
      ledger.notTried(duty, "it has neither marks nor edges");
    }
  }

  /** How many messages have been received so far. */
  int mark() {
    return witness.heard().size();
  }

  /** What has been received since. */
  List<Heard> since(int mark) {
    return witness.heard().subList(mark, mark());
  }

  boolean idle() {
    @Nullable Status status = witness.status();
    return status != null && status.state() == LoggerState.IDLE;
  }

  /** The encoding may change with the message of this index. */
  void mayTurnAt(int index) {
    switches.add(index);
  }

  /** Damage that has been judged already, and the messages lost by it. */
  void excuse(long damaged, long lost) {
    excusedDamage += damaged;
    excusedLost += lost;
  }

  /** Messages missing from the sequence, those excused left out. */
  long lost() {
    return witness.lost() - excusedLost;
  }

  /** Stretches of bytes that were no message, those excused left out. */
  long damaged() {
    return witness.damaged() - excusedDamage;
  }

  List<Integer> switches() {
    return switches;
  }

  /** A stretch in which it sampled, for the laws. */
  void add(Run run) {
    runs.add(run);
  }

  List<Run> runs() {
    return runs;
  }
}
