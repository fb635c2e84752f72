package tripline.harness.conform;

import java.util.List;
import tripline.link.EdgeBlock;
import tripline.link.LossMessage;
import tripline.link.LossWhat;
import tripline.link.MarkMessage;
import tripline.link.SampleBlock;

/** Samples, edges and marks are numbered from 0 at every start, and what is lost is announced. */
final class NumberLaw {
  private static final long WRAP = 0xffff_ffffL;
  private static final int MARK_WRAP = 0xffff;

  private final Ledger ledger;
  private final List<Heard> heard;
  private long nextSample;
  private long nextEdge;
  private int nextMark;
  private boolean know;

  private NumberLaw(Exam exam) {
    ledger = exam.ledger();
    heard = exam.witness().heard();
  }

  static void judge(Exam exam) {
    for (Run run : exam.runs()) {
      new NumberLaw(exam).judge(run);
    }
    if (exam.runs().isEmpty()) {
      exam.ledger().notSeen(Duty.NUMBERS, "it was not seen to sample");
    }
  }

  private void judge(Run run) {
    know = run.begun() == Run.Begun.BY_US;
    for (int i = run.from(); i < run.to(); i++) {
      Heard each = heard.get(i);
      if (i > run.from() && ((each.sequence() - heard.get(i - 1).sequence()) & 0xffff) != 1) {
        // A message is missing: what it held is the sequence's business.
        know = false;
      }
      if (each.message() instanceof SampleBlock block) {
        nextSample = follow("samples", block.number(), nextSample, block.rows());
        know = true;
      } else if (each.message() instanceof EdgeBlock edges) {
        nextEdge = follow("edges", edges.number(), nextEdge, edges.edges());
      } else if (each.message() instanceof LossMessage loss) {
        lost(loss);
      } else if (each.message() instanceof MarkMessage mark) {
        nextMark = (int) follow("mark", mark.number(), nextMark, 1) & MARK_WRAP;
      }
    }
  }

  private void lost(LossMessage loss) {
    if (loss.what() == LossWhat.SAMPLES) {
      nextSample = follow("loss of samples", loss.number(), nextSample, loss.count());
    } else if (loss.what() == LossWhat.EDGES) {
      nextEdge = follow("loss of edges", loss.number(), nextEdge, loss.count());
    }
  }

  private long follow(String what, long number, long expected, long count) {
    ledger.judge(
        Duty.NUMBERS,
        !know || number == expected,
        "%s with number %d, expected %d".formatted(what, number, expected));
    return (number + count) & WRAP;
  }
}
