package tripline.harness.conform;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import tripline.harness.serial.LineGone;
import tripline.link.Ability;
import tripline.link.Answer;
import tripline.link.Encoding;
import tripline.link.MessageType;
import tripline.link.Query;
import tripline.link.Result;

/** Damaged bytes and malformed commands, said to an idle logger (SPEC L4, §12). */
final class DamageStage {
  private static final long REACTS_NS = 650_000_000L;
  private static final int LONGER_THAN_A_FRAME = 700;

  private final Exam exam;
  private final Talker talker;

  DamageStage(Exam exam) {
    this.exam = exam;
    this.talker = exam.talker();
  }

  void run() throws LineGone {
    damaged("a command with one bit wrong", spoilt());
    byte[] garbage = new byte[LONGER_THAN_A_FRAME + 1];
    Arrays.fill(garbage, (byte) 'U');
    garbage[LONGER_THAN_A_FRAME] = 0;
    if (talker.encoding() == Encoding.LINES) {
      garbage[LONGER_THAN_A_FRAME] = '\n';
    }
    damaged("%d bytes of garbage".formatted(LONGER_THAN_A_FRAME), garbage);
    malformed(
        "hello with major 0", MessageType.HELLO, "hello %d major=0 minor=0 encoding=keep", 0, 0, 0);
    malformed("hello that ends too early", MessageType.HELLO, "hello %d major=1", 1);
    if (exam.can(Ability.START_STOP)) {
      String gather = "start %d rate=0 gather=1001";
      malformed("start with gather 1001", MessageType.START, gather, 0, 0, 0, 0, 0xe9, 3);
    }
    if (exam.can(Ability.PLACE)) {
      String tab = "place %d kind=note text=\"a\tb\"";
      malformed("place with a tab in its text", MessageType.PLACE, tab, 4, 3, 'a', 9, 'b');
    }
    overheard();
  }

  /** What only a logger says is no command. */
  private void overheard() throws LineGone {
    long before = counted();
    int from = exam.mark();
    int sequence = talker.take();
    talker.write(talker.encoded(new Answer(MessageType.QUERY.code(), 0, 0, 0), sequence));
    talker.listen(REACTS_NS);
    boolean answered = exam.since(from).stream().anyMatch(h -> h.message() instanceof Answer);
    long after = counted();
    exam.ledger()
        .judge(
            Duty.REFUSALS,
            !answered && after == before,
            "an answer sent to it, which is no command, was %s"
                .formatted(answered ? "answered" : "counted as bad"));
  }

  private byte[] spoilt() {
    byte[] bytes = talker.encoded(new Query(), talker.take());
    bytes[2] ^= 1;
    return bytes;
  }

  private void damaged(String what, byte[] bytes) throws LineGone {
    long before = counted();
    int from = exam.mark();
    long skipped = exam.witness().skipped();
    talker.write(bytes);
    talker.listen(talker.lineNs(bytes.length) + REACTS_NS);
    List<Heard> sent = exam.since(from);
    boolean quiet =
        sent.stream().noneMatch(h -> h.message() instanceof Answer)
            && exam.witness().skipped() == skipped;
    exam.ledger()
        .judge(
            Duty.DAMAGE, quiet, "after %s it sent an answer or bytes of its own".formatted(what));
    grew(Duty.DAMAGE, what, before);
  }

  /** A whole command of one's own making that is not as its table says. */
  private void malformed(String what, MessageType type, String line, int... fields)
      throws LineGone {
    long before = counted();
    int sequence = talker.take();
    byte[] bytes =
        talker.encoding() == Encoding.LINES
            ? Wire.line(line.formatted(sequence))
            : Wire.frame(type, sequence, fields);
    Reply reply = talker.say(bytes, type, sequence);
    exam.ledger()
        .judge(
            Duty.MALFORMED,
            reply.is(Result.BAD_VALUE) && reply.value() == 0,
            "%s: %s %d, expected bad-value 0".formatted(what, reply.word(), reply.value()));
    grew(Duty.MALFORMED, what, before);
  }

  private void grew(Duty duty, String what, long before) throws LineGone {
    long after = counted();
    exam.ledger()
        .judge(
            duty,
            after == before + 1,
            "%s: bad_received went from %d to %d, expected one more"
                .formatted(what, before, after));
  }

  /** Its counter, asked for; the first command after damage must be understood (SPEC D10). */
  private long counted() throws LineGone {
    int sequence = talker.take();
    Reply reply = talker.say(talker.encoded(new Query(), sequence), MessageType.QUERY, sequence);
    if (reply.answer() == null) {
      exam.ledger().fails(Duty.DAMAGE, "the first command after damage was not answered");
      talker.ask(new Query());
    }
    return exam.badReceived();
  }

  /** The same command cut in two with a second between: there is no time-out inside one. */
  void patience() throws LineGone {
    int sequence = talker.take();
    byte[] bytes = talker.encoded(new Query(), sequence);
    int half = bytes.length / 2;
    talker.write(Arrays.copyOf(bytes, half));
    talker.listen(1_500_000_000L);
    Reply reply =
        talker.say(Arrays.copyOfRange(bytes, half, bytes.length), MessageType.QUERY, sequence);
    exam.ledger()
        .judge(
            Duty.PATIENCE,
            reply.is(Result.DONE),
            "a query that took a second and a half to send: " + reply.word());
  }

  /**
   * A query with more behind it than this version knows, as long as the logger says it can take.
   */
  void laterFields() throws LineGone {
    int sequence = talker.take();
    byte[] bytes;
    if (talker.encoding() == Encoding.LINES) {
      bytes = Wire.line("query " + sequence + " later=1 text=\"more\"");
    } else {
      byte[] body = new byte[exam.identity().bodyLimit()];
      Arrays.fill(body, (byte) 0x55);
      body[0] = (byte) MessageType.QUERY.code();
      body[1] = 0;
      body[2] = (byte) sequence;
      body[3] = (byte) (sequence >> 8);
      bytes = Wire.frame(body);
    }
    Reply reply = talker.say(bytes, MessageType.QUERY, sequence);
    exam.ledger()
        .judge(
            Duty.LATER_FIELDS,
            reply.is(Result.DONE),
            "a query with later fields, %d bytes of it: %s".formatted(bytes.length, reply.word()));
  }

  /** Lines may end with CR LF as well (SPEC §7). */
  void carriageReturn() throws LineGone {
    int sequence = talker.take();
    String line = new String(Wire.line("query " + sequence), StandardCharsets.US_ASCII);
    byte[] bytes = line.replace("\n", "\r\n").getBytes(StandardCharsets.US_ASCII);
    Reply reply = talker.say(bytes, MessageType.QUERY, sequence);
    exam.ledger()
        .judge(
            Duty.BOTH_WAYS, reply.is(Result.DONE), "a line that ends with CR LF: " + reply.word());
  }
}
