package tripline.harness.conform;

import tripline.harness.serial.LineGone;
import tripline.link.Ability;
import tripline.link.Hello;
import tripline.link.Identity;
import tripline.link.LinkMessage;
import tripline.link.MarkKind;
import tripline.link.MarkMessage;
import tripline.link.MarkSource;
import tripline.link.Place;
import tripline.link.Query;
import tripline.link.Start;
import tripline.link.Status;

/** The same command again under the same sequence: answered again, not obeyed again (SPEC L14). */
final class RetryStage {
  private static final long LISTENS_NS = 300_000_000L;

  private final Exam exam;
  private final Talker talker;

  RetryStage(Exam exam) {
    this.exam = exam;
    this.talker = exam.talker();
  }

  void run() throws LineGone {
    everything(new Query(), Status.class);
    everything(new Hello(1, 0, 0), Identity.class);
    if (exam.can(Ability.PLACE)) {
      int from = exam.mark();
      twice(new Place(MarkKind.NOTE.code(), "once only"));
      talker.listen(LISTENS_NS);
      long marks = exam.since(from).stream().filter(RetryStage::fromHost).count();
      exam.ledger()
          .judge(
              Duty.RETRY,
              marks == 1,
              "a place said twice set %d marks, expected 1".formatted(marks));
    }
  }

  private static boolean fromHost(Heard heard) {
    return heard.message() instanceof MarkMessage mark && mark.source() == MarkSource.HOST;
  }

  /** Of these a host is sent everything again. */
  private void everything(LinkMessage command, Class<? extends LinkMessage> first) throws LineGone {
    int sequence = talker.take();
    talker.ask(command, sequence);
    Reply again = talker.ask(command, sequence);
    exam.ledger()
        .judge(
            Duty.RETRY,
            !again.before(first).isEmpty(),
            "%s said again: %s, and not what stands before it"
                .formatted(command.type().word(), again.word()));
  }

  /** Says a command twice; the second answer shall be the first. */
  private void twice(LinkMessage command) throws LineGone {
    int sequence = talker.take();
    same(command, talker.ask(command, sequence), talker.ask(command, sequence));
  }

  private void same(LinkMessage command, Reply first, Reply again) {
    exam.ledger()
        .judge(
            Duty.RETRY,
            first.answer() != null && first.answer().equals(again.answer()),
            "%s: %s %d, said again: %s %d"
                .formatted(
                    command.type().word(),
                    first.word(),
                    first.value(),
                    again.word(),
                    again.value()));
  }

  /** Start said again right after it was obeyed. */
  Reply start(Start start) throws LineGone {
    int sequence = talker.take();
    Reply first = talker.ask(start, sequence);
    same(start, first, talker.ask(start, sequence));
    return first;
  }
}
