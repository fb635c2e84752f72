package tripline.harness.conform;

import org.jspecify.annotations.Nullable;
import tripline.harness.serial.LineGone;
import tripline.link.Ability;
import tripline.link.Encoding;
import tripline.link.Fetch;
import tripline.link.Hello;
import tripline.link.Identity;
import tripline.link.LinkMessage;
import tripline.link.ListStored;
import tripline.link.MarkKind;
import tripline.link.MessageType;
import tripline.link.Place;
import tripline.link.Rate;
import tripline.link.Result;
import tripline.link.Start;
import tripline.link.Stop;
import tripline.link.Time;

/** Commands an idle logger is to refuse, each in its own way (SPEC §6). */
final class RefusalStage {
  private static final int NO_COMMAND = 0x5a;
  private static final long MOST_32 = 0xffff_ffffL;
  private static final long A_DAY_MICROS = 1_772_000_000_000_000L;

  private final Exam exam;
  private final Talker talker;

  RefusalStage(Exam exam) {
    this.exam = exam;
    this.talker = exam.talker();
  }

  void run() throws LineGone {
    unknown();
    unfitted(Ability.START_STOP, new Start(0, 0));
    unfitted(Ability.START_STOP, new Stop());
    unfitted(Ability.RATE, new Rate(1_000_000));
    unfitted(Ability.TIME, new Time(A_DAY_MICROS));
    unfitted(Ability.PLACE, new Place(MarkKind.NOTE.code(), ""));
    unfitted(Ability.STORED, new ListStored());
    unfitted(Ability.STORED, new Fetch(1, 0, 0));
    expect(new Hello(1, 0, 9), Result.BAD_VALUE, "hello with encoding 9");
    for (Encoding encoding : Encoding.values()) {
      if (!exam.knows(encoding)) {
        int code = encoding == Encoding.FRAMES ? 1 : 2;
        expect(new Hello(1, 0, code), Result.NOT_FITTED, "hello for an encoding it has not");
      }
    }
    if (exam.can(Ability.START_STOP)) {
      rates();
    }
  }

  private void rates() throws LineGone {
    Identity identity = exam.identity();
    if (identity.rateMinMilliHz() > 1) {
      refuseRate(identity.rateMinMilliHz() - 1, "below rate_min");
    }
    if (identity.rateMaxMilliHz() < MOST_32) {
      refuseRate(identity.rateMaxMilliHz() + 1, "above rate_max");
    }
  }

  private void refuseRate(long rateMilliHz, String what) throws LineGone {
    Reply reply = talker.ask(new Start(rateMilliHz, 0));
    exam.ledger()
        .judge(
            Duty.RATES,
            reply.is(Result.BAD_VALUE),
            "start at %d mHz, %s: %s, expected bad-value"
                .formatted(rateMilliHz, what, reply.word()));
    if (reply.is(Result.DONE)) {
      talker.ask(new Stop());
    }
  }

  /** A type of command that there is not; in text, where it has no name, the answer says type 0. */
  private void unknown() throws LineGone {
    int sequence = talker.take();
    boolean lines = talker.encoding() == Encoding.LINES;
    byte[] bytes =
        lines
            ? Wire.line("whistle " + sequence + " tune=3")
            : Wire.frame(NO_COMMAND, 0, sequence & 0xff, sequence >> 8, 1, 2, 3);
    Reply reply = talker.say(bytes, null, sequence);
    refusal(reply, Result.NOT_KNOWN, "a command that there is not");
    if (reply.answer() != null) {
      int expected = lines ? 0 : NO_COMMAND;
      exam.ledger()
          .judge(
              Duty.REFUSALS,
              reply.answer().commandCode() == expected,
              "the answer to a command that there is not names type %02x, expected %02x"
                  .formatted(reply.answer().commandCode(), expected));
    }
  }

  private void unfitted(Ability ability, LinkMessage command) throws LineGone {
    if (!exam.can(ability)) {
      expect(command, Result.NOT_FITTED, command.type().word() + ", for which it has no ability");
    }
  }

  private void expect(LinkMessage command, Result expected, String what) throws LineGone {
    int sequence = talker.take();
    refusal(
        talker.say(talker.encoded(command, sequence), command.type(), sequence), expected, what);
  }

  private void refusal(Reply reply, Result expected, String what) {
    exam.ledger()
        .judge(
            Duty.REFUSALS,
            reply.is(expected),
            "%s: %s, expected %s".formatted(what, reply.word(), word(expected)));
  }

  static String word(Result result) {
    return result.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }

  /** While it runs: these are not for now. */
  static void whileBusy(Exam exam, LinkMessage command, @Nullable Ability needs) throws LineGone {
    MessageType type = command.type();
    if (needs != null && !exam.can(needs)) {
      return;
    }
    Reply reply = exam.talker().ask(command);
    exam.ledger()
        .judge(
            Duty.REFUSALS,
            reply.is(Result.NOT_NOW),
            "%s while it runs: %s, expected not-now".formatted(type.word(), reply.word()));
  }
}
