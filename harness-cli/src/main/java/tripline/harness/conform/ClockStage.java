package tripline.harness.conform;

import java.util.List;
import tripline.harness.serial.LineGone;
import tripline.link.Ability;
import tripline.link.Query;
import tripline.link.Status;
import tripline.link.Time;
import tripline.link.UtcSource;

/** The logger's clock against the host's, and the time of day (SPEC §4). */
final class ClockStage {
  private static final long APART_NS = 2_000_000_000L;

  /** More than the worst oscillator is off. */
  private static final double RATIO_OFF = 0.02;

  /** Of that the way to and fro is the most. */
  private static final long UTC_OFF_MICROS = 300_000;

  private static final long NS_A_MICRO = 1000;

  /** Some day; what is told need not be true. */
  private static final long TOLD_MICROS = 1_772_445_600_000_000L;

  private final Exam exam;
  private final Talker talker;

  ClockStage(Exam exam) {
    this.exam = exam;
    this.talker = exam.talker();
  }

  private record Reading(long hostNs, Status status) {}

  void run() throws LineGone {
    Reading first = read();
    long toldNs = talker.nowNs();
    if (exam.can(Ability.TIME)) {
      talker.ask(new Time(TOLD_MICROS));
    }
    talker.listen(APART_NS);
    Reading second = read();
    int unused = Long.SIZE - exam.identity().clockBits();
    long micros =
        ((second.status().stampMicros() - first.status().stampMicros()) << unused) >> unused;
    double ratio = micros * (double) NS_A_MICRO / (second.hostNs() - first.hostNs());
    exam.ledger()
        .judge(
            Duty.CLOCK,
            Math.abs(ratio - 1) < RATIO_OFF,
            "in %.3f s of the host's its clock went on by %.3f s"
                .formatted((second.hostNs() - first.hostNs()) * 1e-9, micros * 1e-6));
    if (exam.can(Ability.TIME)) {
      long expected = TOLD_MICROS + (second.hostNs() - toldNs) / NS_A_MICRO;
      long off = second.status().utcMicros() - expected;
      exam.ledger()
          .judge(
              Duty.CLOCK,
              Math.abs(off) < UTC_OFF_MICROS && second.status().utcSource() != UtcSource.NONE,
              "told the time of day, its status is off by %.3f s, from source %s"
                  .formatted(off * 1e-6, second.status().utcSource()));
    }
  }

  private Reading read() throws LineGone {
    Reply reply = talker.ask(new Query());
    List<Heard> statuses =
        reply.before().stream().filter(h -> h.message() instanceof Status).toList();
    exam.ledger()
        .judge(
            Duty.PLACES,
            !statuses.isEmpty() || reply.answer() == null,
            "query was answered %s with no status before it".formatted(reply.word()));
    Heard last = statuses.isEmpty() ? null : statuses.get(statuses.size() - 1);
    return last != null && last.message() instanceof Status status
        ? new Reading(last.arrivalNs(), status)
        : new Reading(talker.nowNs(), lastKnown());
  }

  private Status lastKnown() {
    Status status = exam.witness().status();
    if (status == null) {
      throw new IllegalStateException("no status at all");
    }
    return status;
  }
}
