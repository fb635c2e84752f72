package tripline.harness.conform;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import tripline.link.EdgeBlock;
import tripline.link.LossMessage;
import tripline.link.MarkMessage;
import tripline.link.MessageType;
import tripline.link.SampleBlock;

/** Stamps against each other: forward in each kind, edges and marks before later rows. */
final class TimeLaw {
  /** Two stamps are cut to microseconds. */
  private static final long ROUNDED_NS = 2_000;

  private TimeLaw() {}

  static void judge(Exam exam, Times times) {
    forward(exam, times);
    for (Run run : exam.runs()) {
      before(exam, times, run);
      regular(exam, times, run);
    }
  }

  private static void forward(Exam exam, Times times) {
    List<Heard> heard = exam.witness().heard();
    Map<MessageType, Long> latest = new EnumMap<>(MessageType.class);
    for (int i = 0; i < heard.size(); i++) {
      if (!Times.tells(heard.get(i).message()) || heard.get(i).message() instanceof LossMessage) {
        continue;
      }
      MessageType type = heard.get(i).message().type();
      long before = latest.getOrDefault(type, Long.MIN_VALUE);
      exam.ledger()
          .judge(
              Duty.FORWARD,
              before == Long.MIN_VALUE || times.firstNs(i) >= before - ROUNDED_NS,
              "%s stamped %.6f s before the one before it"
                  .formatted(type.word(), (before - times.firstNs(i)) * 1e-9));
      latest.put(type, times.lastNs(i));
    }
  }

  private static void before(Exam exam, Times times, Run run) {
    List<Heard> heard = exam.witness().heard();
    long rowNs = Long.MIN_VALUE;
    for (int i = run.from(); i < run.to(); i++) {
      if (heard.get(i).message() instanceof SampleBlock) {
        rowNs = Math.max(rowNs, times.lastNs(i));
      } else if (heard.get(i).message() instanceof MarkMessage
          || heard.get(i).message() instanceof EdgeBlock) {
        exam.ledger()
            .judge(
                Duty.BEFORE,
                rowNs == Long.MIN_VALUE || times.firstNs(i) >= rowNs - ROUNDED_NS,
                "%s came after a block whose last row is %.3f ms later"
                    .formatted(
                        heard.get(i).message().type().word(), (rowNs - times.firstNs(i)) * 1e-6));
      }
    }
    exam.uneventful(Duty.BEFORE);
  }

  /** Rows of one period lie on a line over their number, of the slope that was answered. */
  private static void regular(Exam exam, Times times, Run run) {
    List<Heard> heard = exam.witness().heard();
    int first = -1;
    int last = -1;
    for (int i = run.from(); i < run.to(); i++) {
      if (heard.get(i).message() instanceof SampleBlock block && block.periodNs() > 0) {
        first = first < 0 ? i : first;
        last = i;
      }
    }
    if (first < 0 || number(heard, last) - number(heard, first) < 2) {
      exam.ledger().notSeen(Duty.STAMPS, "too few samples of an even period");
      return;
    }
    long instants = number(heard, last) - number(heard, first);
    double period = (double) (times.firstNs(last) - times.firstNs(first)) / instants;
    double told = 1e12 / run.rateMilliHz();
    exam.ledger()
        .judge(
            Duty.RATES,
            Math.abs(period / told - 1) < 0.02 + 1.5 / instants,
            "answered %.3f Hz and sampled at %.3f"
                .formatted(run.rateMilliHz() * 1e-3, 1e9 / period));
    double worst = 0;
    for (int i = first; i <= last; i++) {
      if (heard.get(i).message() instanceof SampleBlock) {
        double expected = times.firstNs(first) + period * (number(heard, i) - number(heard, first));
        worst = Math.max(worst, Math.abs(times.firstNs(i) - expected));
      }
    }
    exam.ledger()
        .judge(
            Duty.STAMPS,
            worst <= period / 2,
            "stamps of blocks are up to %.3f ms off an even period of %.3f ms"
                .formatted(worst * 1e-6, period * 1e-6));
  }

  private static long number(List<Heard> heard, int index) {
    return ((SampleBlock) heard.get(index).message()).number();
  }
}
