package tripline.harness.conform;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.LongConsumer;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import tripline.harness.failure.LinkFailure;
import tripline.harness.serial.ByteLine;
import tripline.harness.serial.LineGone;
import tripline.harness.serial.Reach;
import tripline.link.Answer;
import tripline.link.Encoding;
import tripline.link.Identity;
import tripline.link.LinkEncoder;
import tripline.link.LinkMessage;
import tripline.link.MarkMessage;
import tripline.link.MessageType;
import tripline.link.Result;
import tripline.link.Status;

/** Says things to a logger, right ones and wrong ones, and listens. */
final class Talker {
  /** An answer begins to arrive within this (SPEC §6). */
  static final long ANSWER_NS = 500_000_000L;

  /** What this host may add to it: its own scheduling. */
  static final long GRACE_NS = 60_000_000L;

  /** Later than this it is no late answer any more, but none. */
  private static final long GIVEN_UP_NS = 2_500_000_000L;

  /** Everything that stands before an answer has come by then. */
  private static final long MOST_NS = 8_000_000_000L;

  private static final int TRIES = 3;

  /** A logger that is busy is asked so often again, and so long later: two seconds in all. */
  private static final int BUSY_TRIES = 10;

  private static final long BUSY_NS = 200_000_000L;
  private static final int BITS_A_BYTE = 10;
  private static final byte[] DELIMITER = {0};

  private static final long TRIES_EVERY_NS = 100_000_000L;

  private final Reach reach;
  private final LongConsumer pauseNs;
  private final Map<Integer, Integer> said = new HashMap<>();
  private final Witness witness;
  private final Ledger ledger;
  private final LongSupplier nanoTime;
  private final int baud;
  private final LinkEncoder encoder = new LinkEncoder();
  private final byte[] in = new byte[8192];
  private Encoding encoding = Encoding.FRAMES;
  private @Nullable Encoding spoken;
  private ByteLine line;

  Talker(
      Reach reach,
      Witness witness,
      Ledger ledger,
      LongSupplier nanoTime,
      LongConsumer pauseNs,
      int baud) {
    this.reach = reach;
    this.pauseNs = pauseNs;
    line = reach.open();
    this.witness = witness;
    this.ledger = ledger;
    this.nanoTime = nanoTime;
    this.baud = baud;
  }

  /** Encoding of the commands from here on. */
  void speak(Encoding next) {
    encoding = next;
  }

  Encoding encoding() {
    return encoding;
  }

  long nowNs() {
    return nanoTime.getAsLong();
  }

  /** Time that so many bytes take on the line. */
  long lineNs(int bytes) {
    return (long) bytes * BITS_A_BYTE * 1_000_000_000L / baud;
  }

  /** How often a command of this sequence was said. */
  int said(int sequence) {
    return said.getOrDefault(sequence, 0);
  }

  /** A sequence of its own for a command. */
  int take() {
    int sequence = encoder.nextSequence();
    encoder.skip();
    return sequence;
  }

  /** Takes what comes, for so long. */
  void listen(long durationNs) throws LineGone {
    long startNs = nowNs();
    while (nowNs() - startNs < durationNs) {
      pump();
    }
  }

  /** Takes what has come, or waits a moment for it. */
  void pump() throws LineGone {
    int got = line.read(in);
    if (got > 0) {
      witness.accept(in, got);
    }
  }

  /** Bytes, whatever they are. */
  void write(byte[] bytes) throws LineGone {
    line.write(bytes, bytes.length);
  }

  /** A zero byte where the encoding of commands changes (SPEC H2). */
  private void turnTo(Encoding next) throws LineGone {
    if (spoken != null && spoken != next) {
      write(DELIMITER);
    }
    spoken = next;
  }

  /** A command as bytes, in the encoding spoken. */
  byte[] encoded(LinkMessage command, int sequence) {
    byte[] out = new byte[LinkEncoder.MOST_BYTES];
    return Arrays.copyOf(out, encoder.encode(command, sequence, encoding, out, 0));
  }

  /**
   * Says a command until it is answered, three times at most (SPEC H3); one that is busy is asked
   * again, as busy asks for (SPEC §5, 0A).
   */
  Reply ask(LinkMessage command) throws LineGone {
    Reply reply = ask(command, take());
    for (int tries = 0; tries < BUSY_TRIES && reply.is(Result.BUSY); tries++) {
      listen(BUSY_NS);
      reply = ask(command, take());
    }
    return reply;
  }

  /** As above under a given sequence. */
  Reply ask(LinkMessage command, int sequence) throws LineGone {
    Reply reply = say(encoded(command, sequence), command.type(), sequence);
    for (int tries = 1; tries < TRIES && reply.answer() == null; tries++) {
      reply = say(encoded(command, sequence), command.type(), sequence);
    }
    if (reply.answer() == null) {
      ledger.fails(Duty.ANSWERS, command.type().word() + " was not answered");
    }
    return reply;
  }

  /** Sends bytes that are a command of a type (null: of none) and waits for its answer. */
  Reply say(byte[] bytes, @Nullable MessageType type, int sequence) throws LineGone {
    turnTo(encoding);
    said.merge(sequence, 1, Integer::sum);
    int from = witness.heard().size();
    write(bytes);
    long sentNs = nowNs() + lineNs(bytes.length);
    int looked = from;
    long begunNs = 0;
    while (true) {
      pump();
      List<Heard> heard = witness.heard();
      for (; looked < heard.size(); looked++) {
        Heard next = heard.get(looked);
        if (begunNs == 0 && begins(next.message(), type)) {
          begunNs = next.arrivalNs();
        }
        if (next.message() instanceof Answer answer && answer.to() == sequence) {
          time(type, sequence, begunNs - sentNs);
          typed(answer, type);
          return new Reply(answer, heard.subList(from, looked), looked + 1);
        }
      }
      long waitedNs = nowNs() - sentNs;
      if (begunNs == 0 ? waitedNs > GIVEN_UP_NS : waitedNs > MOST_NS) {
        return new Reply(null, heard.subList(from, looked), looked);
      }
    }
  }

  /** The first message that belongs to what a logger sends for a command. */
  private static boolean begins(LinkMessage message, @Nullable MessageType type) {
    boolean first =
        type == MessageType.HELLO
            ? message instanceof Identity
            : type == MessageType.PLACE
                ? message instanceof MarkMessage
                : (type == MessageType.QUERY || type == MessageType.STOP)
                    && message instanceof Status;
    return first || message instanceof Answer;
  }

  private void time(@Nullable MessageType type, int sequence, long tookNs) {
    String word = type == null ? "a command" : type.word();
    ledger.judge(
        Duty.IN_TIME,
        tookNs <= ANSWER_NS + GRACE_NS,
        "%s %d: the answer began after %d ms".formatted(word, sequence, tookNs / 1_000_000));
  }

  private void typed(Answer answer, @Nullable MessageType type) {
    if (type != null) {
      ledger.judge(
          Duty.ANSWERS,
          answer.commandCode() == type.code(),
          "the answer to %s (type %02x) says it is to type %02x"
              .formatted(type.word(), type.code(), answer.commandCode()));
    }
  }

  /** Whether a further answer to a sequence comes within so long. */
  boolean answered(int sequence, long withinNs) throws LineGone {
    int from = witness.heard().size();
    listen(withinNs);
    return witness.heard().subList(from, witness.heard().size()).stream()
        .anyMatch(h -> h.message() instanceof Answer answer && answer.to() == sequence);
  }

  /**
   * Opens the line anew, as soon as the port is back.
   *
   * @throws LinkFailure if it is not back in time
   */
  void reopen(long withinNs) {
    line.close();
    long startNs = nowNs();
    while (true) {
      pauseNs.accept(TRIES_EVERY_NS);
      try {
        line = reach.open();
        return;
      } catch (LinkFailure e) {
        if (nowNs() - startNs > withinNs) {
          throw e;
        }
      }
    }
  }

  void close() {
    line.close();
  }
}
