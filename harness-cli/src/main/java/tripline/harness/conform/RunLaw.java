package tripline.harness.conform;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import tripline.link.EdgeBlock;
import tripline.link.MarkMessage;
import tripline.link.SampleBlock;
import tripline.link.Status;

/**
 * How soon things are sent while it samples. The clocks of both ends have no common zero: the
 * quickest message of a run stands for no delay at all.
 */
final class RunLaw {
  /** What the way to this host may add: buffers, scheduling. */
  private static final long WAY_NS = 50_000_000L;

  private static final long PROMPT_NS = 20_000_000L;
  private static final long USUAL_GATHER_NS = 20_000_000L;
  private static final long STATUS_NS = 1_000_000_000L;
  private static final int LONGEST_MESSAGE = 519;

  /** One in so many may be late for a reason of this host's own. */
  private static final int FEW = 10;

  private final Exam exam;
  private final List<Heard> heard;
  private final Times times;
  private final Run run;
  private final long quickestNs;

  private RunLaw(Exam exam, Times times, Run run) {
    this.exam = exam;
    this.heard = exam.witness().heard();
    this.times = times;
    this.run = run;
    long least = Long.MAX_VALUE;
    for (int i = run.from(); i < run.to(); i++) {
      if (heard.get(i).message() instanceof Status
          || heard.get(i).message() instanceof MarkMessage) {
        least = Math.min(least, heard.get(i).arrivalNs() - times.lastNs(i));
      }
    }
    quickestNs = least;
  }

  static void judge(Exam exam, Times times) {
    for (Run run : exam.runs()) {
      RunLaw law = new RunLaw(exam, times, run);
      if (run.begun() == Run.Begun.BY_US) {
        law.gather();
        law.firstRow();
      }
      law.prompt();
      law.status();
    }
    if (exam.runs().isEmpty()) {
      for (Duty duty :
          List.of(
              Duty.GATHER, Duty.PROMPT, Duty.STATUS, Duty.STAMPS, Duty.BEFORE, Duty.FIRST_ROW)) {
        exam.ledger().notSeen(duty, "it was not seen to sample");
      }
    }
  }

  /** How long after a moment of its own a message came. */
  private long delayNs(int index, long momentNs) {
    return heard.get(index).arrivalNs() - momentNs - quickestNs;
  }

  private static long median(List<Long> values) {
    List<Long> sorted = new ArrayList<>(values);
    Collections.sort(sorted);
    return sorted.get(sorted.size() / 2);
  }

  private void gather() {
    long asked = run.gatherMillis() == 0 ? USUAL_GATHER_NS : run.gatherMillis() * 1_000_000L;
    long period = 1_000_000_000_000L / run.rateMilliHz();
    long allowed = asked + Math.min(period, asked) + WAY_NS / 10;
    List<Long> delays = new ArrayList<>();
    List<Long> ends = new ArrayList<>();
    int tooLong = 0;
    for (int i = run.from(); i < run.to(); i++) {
      if (heard.get(i).message() instanceof SampleBlock) {
        tooLong += times.lastNs(i) - times.firstNs(i) > allowed ? 1 : 0;
        delays.add(delayNs(i, times.firstNs(i)));
        ends.add(delayNs(i, times.lastNs(i)));
      }
    }
    if (delays.isEmpty() || quickestNs == Long.MAX_VALUE) {
      exam.ledger().notSeen(Duty.GATHER, "too few messages");
      return;
    }
    long late = asked + WAY_NS + exam.talker().lineNs(LONGEST_MESSAGE);
    exam.ledger()
        .judge(
            Duty.GATHER,
            tooLong <= delays.size() / FEW && median(delays) <= late,
            "asked for %d ms: of %d blocks %d hold more, and they usually come %d ms after their first row"
                .formatted(asked / 1_000_000, delays.size(), tooLong, median(delays) / 1_000_000));
    exam.ledger()
        .judge(
            Duty.STAMPS,
            median(ends) > -WAY_NS / 2,
            "the last row of a block usually lies %d ms after the block has come"
                .formatted(-median(ends) / 1_000_000));
  }

  private void prompt() {
    List<Long> delays = new ArrayList<>();
    for (int i = run.from(); i < run.to(); i++) {
      if (heard.get(i).message() instanceof MarkMessage
          || heard.get(i).message() instanceof EdgeBlock) {
        delays.add(delayNs(i, times.firstNs(i)));
      }
    }
    if (delays.isEmpty() || quickestNs == Long.MAX_VALUE) {
      exam.uneventful(Duty.PROMPT);
      return;
    }
    exam.ledger()
        .judge(
            Duty.PROMPT,
            median(delays) <= PROMPT_NS + WAY_NS,
            "edges and marks usually come %d ms after they happened"
                .formatted(median(delays) / 1_000_000));
  }

  /** Over the stretch in which nothing was asked of it, by its own clock. */
  private void status() {
    long before = Long.MIN_VALUE;
    long longest = 0;
    long latest = Long.MIN_VALUE;
    for (int i = run.from(); i < run.quietTo(); i++) {
      if (!Times.tells(heard.get(i).message())) {
        continue;
      }
      latest = times.lastNs(i);
      before = before == Long.MIN_VALUE ? times.firstNs(i) : before;
      if (heard.get(i).message() instanceof Status) {
        longest = Math.max(longest, times.firstNs(i) - before);
        before = times.firstNs(i);
      }
    }
    if (latest == Long.MIN_VALUE) {
      return;
    }
    longest = Math.max(longest, latest - before);
    exam.ledger()
        .judge(
            Duty.STATUS,
            longest <= STATUS_NS + Talker.GRACE_NS,
            "%.2f s without a status while it ran".formatted(longest * 1e-9));
  }

  private void firstRow() {
    int contacts = exam.identity().contacts();
    long all = contacts == Long.SIZE ? -1 : (1L << contacts) - 1;
    for (int i = run.from(); i < run.to(); i++) {
      if (heard.get(i).message() instanceof SampleBlock block) {
        exam.ledger()
            .judge(
                Duty.FIRST_ROW,
                block.known() == all,
                "the first samples after start know contacts %x, expected %x"
                    .formatted(block.known(), all));
        return;
      }
    }
    exam.ledger().fails(Duty.FIRST_ROW, "no samples at all after start");
  }
}
