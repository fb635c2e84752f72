package tripline.harness.conform;

import java.util.List;
import java.util.Locale;
import tripline.harness.serial.LineGone;
import tripline.link.Ability;
import tripline.link.Encoding;
import tripline.link.Hello;
import tripline.link.Identity;
import tripline.link.MessageType;
import tripline.link.Query;
import tripline.link.Result;
import tripline.link.Start;
import tripline.link.Stop;
import tripline.link.Talk;

/** The other encoding and back, at rest and with commands in either (SPEC §6, §8, L15). */
final class EncodingStage {
  private static final long RUNS_NS = 700_000_000L;

  private final Exam exam;
  private final Talker talker;

  EncodingStage(Exam exam) {
    this.exam = exam;
    this.talker = exam.talker();
  }

  void run() throws LineGone {
    Encoding first = last();
    Encoding other = first == Encoding.FRAMES ? Encoding.LINES : Encoding.FRAMES;
    if (!exam.knows(other)) {
      exam.ledger()
          .notTried(
              Duty.BOTH_WAYS, "it has one encoding, " + first.name().toLowerCase(Locale.ROOT));
      exam.ledger().holds(Duty.ENCODING);
      return;
    }
    askIn(other);
    talker.speak(first);
    turnTo(other);
    talker.speak(other);
    new DamageStage(exam).laterFields();
    if (other == Encoding.LINES) {
      new DamageStage(exam).carriageReturn();
    }
    if (exam.can(Ability.START_STOP)) {
      talker.ask(new Start(exam.identity().rateMinMilliHz(), 0));
      talker.listen(RUNS_NS);
      talker.ask(new Stop());
    }
    askIn(first);
    talker.speak(other);
    turnTo(first);
    talker.speak(first);
  }

  private Encoding last() {
    return exam.witness().heard().get(exam.mark() - 1).encoding();
  }

  /** A query in an encoding it does not talk in; answered in the one it talks in. */
  private void askIn(Encoding encoding) throws LineGone {
    talker.speak(encoding);
    int sequence = talker.take();
    Reply reply = talker.say(talker.encoded(new Query(), sequence), MessageType.QUERY, sequence);
    exam.ledger()
        .judge(
            Duty.BOTH_WAYS,
            reply.is(Result.DONE),
            "a query in %s: %s".formatted(encoding.name().toLowerCase(Locale.ROOT), reply.word()));
  }

  private void turnTo(Encoding encoding) throws LineGone {
    int from = exam.mark();
    Talk talk = encoding == Encoding.FRAMES ? Talk.FRAMES : Talk.LINES;
    long damaged = exam.witness().damaged();
    long lost = exam.witness().lost();
    Reply reply = talker.ask(new Hello(1, 0, talk.code()));
    List<Heard> came = exam.since(from);
    int turned = 0;
    while (turned < came.size() && came.get(turned).encoding() != encoding) {
      turned++;
    }
    exam.mayTurnAt(from + turned);
    String word = encoding.name().toLowerCase(Locale.ROOT);
    if (!reply.is(Result.DONE) || turned == came.size()) {
      exam.ledger()
          .fails(
              Duty.ENCODING,
              "hello for %s: %s, and no message in it".formatted(word, reply.word()));
      return;
    }
    Heard first = came.get(turned);
    long damage = exam.witness().damaged() - damaged;
    exam.excuse(damage, exam.witness().lost() - lost);
    boolean clean = first.afterDelimiter() && damage == 0;
    exam.ledger()
        .judge(
            Duty.ENCODING,
            first.message() instanceof Identity,
            "the first message in %s was no identity but %s"
                .formatted(word, first.message().type().word()));
    exam.ledger().judge(Duty.ENCODING, clean, "no zero byte before the first message in " + word);
  }
}
