package tripline.harness.conform;

import java.util.Optional;
import java.util.function.LongConsumer;
import java.util.function.LongSupplier;
import tripline.harness.failure.LinkFailure;
import tripline.harness.serial.LineGone;
import tripline.harness.serial.Reach;
import tripline.link.Ability;
import tripline.link.Encoding;
import tripline.link.Status;

/** Examines a logger. */
public final class Conformity {
  private final String port;
  private final Reach reach;
  private final LongSupplier nanoTime;
  private final LongConsumer pauseNs;
  private final int baud;

  /**
   * @param port for messages
   * @param reach opens the line, again after a power cycle
   * @param nanoTime a clock that never steps, ns
   * @param pauseNs lets time pass between two tries to open the line
   * @param baud line rate; over USB it means nothing
   */
  public Conformity(
      String port, Reach reach, LongSupplier nanoTime, LongConsumer pauseNs, int baud) {
    this.port = port;
    this.reach = reach;
    this.nanoTime = nanoTime;
    this.pauseNs = pauseNs;
    this.baud = baud;
  }

  /**
   * Examines the logger at the port, which takes about half a minute, and leaves it idle.
   *
   * @param askForPower asks somebody to switch it off and on; empty: that is not tried
   * @throws LinkFailure if nobody speaks there, or the line is lost
   */
  public Report examine(Optional<Runnable> askForPower) {
    Witness witness = new Witness(nanoTime);
    Ledger ledger = new Ledger();
    Talker talker = new Talker(reach, witness, ledger, nanoTime, pauseNs, baud);
    try {
      Exam exam = new Exam(talker, witness, ledger);
      if (new GreetingStage(exam).run(port)) {
        stages(exam);
        laws(exam);
        if (askForPower.isPresent()) {
          new PowerStage(exam).run(askForPower.get());
        } else {
          PowerStage.skipped(exam);
        }
      } else {
        heardOut(exam);
      }
      return new Report(exam.identity(), ledger.lines());
    } catch (LineGone e) {
      throw new LinkFailure(port, e.what() + " while it was examined");
    } finally {
      talker.close();
    }
  }

  private void stages(Exam exam) throws LineGone {
    Ledger ledger = exam.ledger();
    ledger.notTried(Duty.REPEATS, "it receives");
    exam.talker().speak(exam.knows(Encoding.FRAMES) ? Encoding.FRAMES : Encoding.LINES);
    new ClockStage(exam).run();
    new RefusalStage(exam).run();
    DamageStage damage = new DamageStage(exam);
    damage.run();
    damage.patience();
    damage.laterFields();
    new RetryStage(exam).run();
    if (exam.can(Ability.START_STOP)) {
      new RunningStage(exam).run();
    } else {
      for (Duty duty : new Duty[] {Duty.RATES, Duty.STOPS, Duty.EVERY_STATE}) {
        ledger.notTried(duty, "it does not obey start and stop");
      }
    }
    new EncodingStage(exam).run();
    new StoredStage(exam).run();
  }

  private static void laws(Exam exam) {
    Times times = new Times(exam.witness().heard(), exam.identity().clockBits());
    TransmissionLaw.judge(exam);
    NumberLaw.judge(exam);
    TimeLaw.judge(exam, times);
    RunLaw.judge(exam, times);
    ContactLaw.judge(exam);
  }

  /** It cannot receive: what it sends is all there is to judge. */
  private void heardOut(Exam exam) {
    if (exam.witness().identity() == null) {
      throw new LinkFailure(port, "the logger answers nothing, and does not say who it is");
    }
    for (Duty duty : Duty.values()) {
      if (duty.needsAnswers()) {
        exam.ledger().notTried(duty, "it does not receive");
      }
    }
    Status status = exam.witness().status();
    if (status != null && status.rateMilliHz() > 0) {
      exam.add(new Run(Run.Begun.BY_ITSELF, 0, exam.mark(), exam.mark(), status.rateMilliHz(), 0));
    }
    laws(exam);
  }
}
