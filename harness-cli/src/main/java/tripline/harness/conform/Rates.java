package tripline.harness.conform;

import tripline.harness.serial.LineGone;
import tripline.link.Ability;
import tripline.link.Identity;
import tripline.link.Rate;
import tripline.link.Result;
import tripline.link.Start;

/** The rate an examination samples at, and how the logger takes being told rates (SPEC §6). */
final class Rates {
  /** What is wanted if the logger and its line can do it: 200 Hz. */
  private static final long WANTED_MILLI_HZ = 200_000;

  /** Bytes a row may take, in lines, with every contact changed. */
  private static final long ROW_BYTES = 24;

  private static final long MILLI = 1000;
  private static final long SECOND_NS = 1_000_000_000L;
  private static final long MOST_32 = 0xffff_ffffL;

  private final Exam exam;
  private long told;

  Rates(Exam exam) {
    this.exam = exam;
  }

  /** A rate the logger can do and the line can carry. */
  private long wanted() {
    long carried = SECOND_NS / exam.talker().lineNs(1) / ROW_BYTES * MILLI;
    return nearest(Math.max(1, Math.min(WANTED_MILLI_HZ, carried)));
  }

  private long nearest(long rate) {
    Identity identity = exam.identity();
    return Math.max(identity.rateMinMilliHz(), Math.min(identity.rateMaxMilliHz(), rate));
  }

  /** Whether it samples so slowly that half a second may pass without a row. */
  boolean slow() {
    return wanted() < 4 * MILLI;
  }

  /** What to say in start: 0, the rate told before, where one could be told. */
  long toTell() {
    return exam.can(Ability.RATE) ? 0 : wanted();
  }

  /** Tells the rate, where that can be told, and starts. */
  Reply start(int gatherMillis) throws LineGone {
    told = wanted();
    if (exam.can(Ability.RATE)) {
      tell(Math.min(MOST_32, exam.identity().rateMaxMilliHz() + 1), "above rate_max");
      told = tell(wanted(), "in range").value();
    }
    Reply reply = exam.talker().ask(new Start(toTell(), gatherMillis));
    boolean near = Math.abs(reply.value() - told) <= told / 50 + 1;
    judge(
        reply.is(Result.DONE) && near,
        "start at %d mHz: %s %d".formatted(told, reply.word(), reply.value()));
    return reply;
  }

  private Reply tell(long rate, String what) throws LineGone {
    Reply reply = exam.talker().ask(new Rate(rate));
    judge(
        reply.is(Result.DONE) && reply.value() > 0 && reply.value() == nearest(reply.value()),
        "rate %d, %s: %s %d, expected done and the nearest it can do"
            .formatted(rate, what, reply.word(), reply.value()));
    return reply;
  }

  private void judge(boolean kept, String what) {
    exam.ledger().judge(Duty.RATES, kept, what);
  }
}
