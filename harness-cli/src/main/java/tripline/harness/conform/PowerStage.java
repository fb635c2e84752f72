package tripline.harness.conform;

import java.util.ArrayList;
import java.util.List;
import tripline.harness.serial.LineGone;
import tripline.link.ChannelDescription;
import tripline.link.Hello;
import tripline.link.Identity;
import tripline.link.LinkMessage;
import tripline.link.Status;

/** Switched off and on by whoever stands beside it (SPEC L1, L16). */
final class PowerStage {
  private static final long WITHIN_NS = 60_000_000_000L;
  private static final long DESCRIBES_NS = 2_500_000_000L;
  private static final long TRIES_EVERY_NS = 100_000_000L;

  /** A clock that started at power-up reads less than this. */
  private static final long NEAR_ZERO_MICROS = 70_000_000L;

  private final Exam exam;
  private final Talker talker;
  private boolean reopened;

  PowerStage(Exam exam) {
    this.exam = exam;
    this.talker = exam.talker();
  }

  void run(Runnable ask) throws LineGone {
    long before = exam.identity().session();
    int from = exam.mark();
    ask.run();
    long startNs = talker.nowNs();
    int found = -1;
    while (found < 0 && talker.nowNs() - startNs < WITHIN_NS) {
      listen(TRIES_EVERY_NS);
      found = identity(from);
    }
    if (found < 0) {
      asked(before);
      return;
    }
    listen(DESCRIBES_NS);
    judge(found, before);
  }

  /** A logger on USB takes its port with it. */
  private void listen(long durationNs) throws LineGone {
    try {
      talker.listen(durationNs);
    } catch (LineGone e) {
      reopened = true;
      talker.reopen(WITHIN_NS);
    }
  }

  private int identity(int from) {
    for (int i = from; i < exam.mark(); i++) {
      if (exam.witness().heard().get(i).message() instanceof Identity) {
        return i;
      }
    }
    return -1;
  }

  /** It said nothing on its own: was it switched off at all? */
  private void asked(long before) throws LineGone {
    talker.ask(new Hello(1, 0, 0));
    if (exam.identity().session() != before) {
      exam.ledger().fails(Duty.POWER_UP, "it has a new session, and did not say so by itself");
    } else {
      exam.ledger()
          .notSeen(
              Duty.POWER_UP, "it was not switched off and on within a minute, or did not say so");
    }
  }

  private void judge(int found, long before) {
    List<Heard> after = exam.since(found);
    Heard first = after.get(0);
    exam.ledger()
        .judge(
            Duty.SESSION,
            ((Identity) first.message()).session() != before,
            "after power-up the session is %d as before".formatted(before));
    List<Object> order = new ArrayList<>();
    List<Object> expected = new ArrayList<>(List.of(Identity.class));
    Identity identity = (Identity) first.message();
    for (int i = 0; i < identity.positions() + identity.contacts(); i++) {
      expected.add(ChannelDescription.class);
    }
    expected.add(Status.class);
    for (Heard heard : after) {
      LinkMessage message = heard.message();
      if (order.size() < expected.size()) {
        order.add(message.getClass());
      }
    }
    exam.ledger()
        .judge(
            Duty.POWER_UP,
            order.equals(expected),
            "after power-up came %d messages, not identity, every channel and status"
                .formatted(after.size()));
    if (!reopened) {
      exam.ledger()
          .judge(
              Duty.POWER_UP,
              first.afterDelimiter() && first.sequence() == 0,
              "its first message after power-up has sequence %d, %s"
                  .formatted(
                      first.sequence(),
                      first.afterDelimiter() ? "after a delimiter" : "no delimiter before it"));
    }
    Status status = exam.witness().status();
    exam.ledger()
        .judge(
            Duty.POWER_UP,
            status != null && status.stampMicros() < NEAR_ZERO_MICROS,
            "its clock does not begin near 0 at power-up");
  }

  /** Where nobody can be asked. */
  static void skipped(Exam exam) {
    exam.ledger()
        .notTried(Duty.POWER_UP, "ask for it with --power-cycle, and switch it off and on");
  }
}
