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
  private final Count samples = new Count();
  private final Count edges = new Count();
  private final Count marks = new Count();

  /** What is numbered one by one; where the run was joined, from the first number heard. */
  private static final class Count {
    private long next;
    private boolean known;
  }

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
    know(run.begun() == Run.Begun.BY_US);
    for (int i = run.from(); i < run.to(); i++) {
      Heard each = heard.get(i);
      if (i > run.from() && ((each.sequence() - heard.get(i - 1).sequence()) & 0xffff) != 1) {
        // A message is missing: what it held is the sequence's business.
        know(false);
      }
      if (each.message() instanceof SampleBlock block) {
        follow("samples", block.number(), samples, block.rows());
      } else if (each.message() instanceof EdgeBlock block) {
        follow("edges", block.number(), edges, block.edges());
      } else if (each.message() instanceof LossMessage loss) {
        lost(loss);
      } else if (each.message() instanceof MarkMessage mark) {
        follow("mark", mark.number(), marks, 1);
        marks.next &= MARK_WRAP;
      }
    }
  }

  private void know(boolean known) {
    samples.known = known;
    edges.known = known;
    marks.known = known;
  }

  private void lost(LossMessage loss) {
    if (loss.what() == LossWhat.SAMPLES) {
      follow("loss of samples", loss.number(), samples, loss.count());
    } else if (loss.what() == LossWhat.EDGES) {
      follow("loss of edges", loss.number(), edges, loss.count());
    }
  }

  private void follow(String what, long number, Count count, long many) {
    ledger.judge(
        Duty.NUMBERS,
        !count.known || number == count.next,
        "%s with number %d, expected %d".formatted(what, number, count.next));
    count.known = true;
    count.next = (number + many) & WRAP;
  }
}
