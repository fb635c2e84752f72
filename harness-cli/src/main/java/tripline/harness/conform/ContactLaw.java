package tripline.harness.conform;

import java.util.List;
import tripline.link.EdgeBlock;
import tripline.link.Reports;
import tripline.link.SampleBlock;

/** Contacts as their channels describe them: in rows, in edges, every change once (SPEC L11). */
final class ContactLaw {
  private static final int UNKNOWN = -1;

  private final Exam exam;
  private final List<Heard> heard;
  private final int[] levels = new int[Long.SIZE];
  private long edges;

  private ContactLaw(Exam exam) {
    this.exam = exam;
    this.heard = exam.witness().heard();
  }

  static void judge(Exam exam) {
    ContactLaw law = new ContactLaw(exam);
    exam.runs().forEach(law::judge);
    long edged = exam.contacts(c -> c.reports() != Reports.SAMPLED);
    if (law.edges > 0 || (edged == 0 && !exam.runs().isEmpty())) {
      exam.ledger().holds(Duty.CHANGES);
    } else {
      exam.ledger()
          .notSeen(
              Duty.CHANGES,
              "no contact that reports edges changed: operate one while this goes on");
    }
  }

  private void judge(Run run) {
    java.util.Arrays.fill(levels, UNKNOWN);
    boolean first = run.begun() == Run.Begun.BY_US;
    long edgesOnly = exam.contacts(c -> c.reports() == Reports.EDGES);
    for (int i = run.from(); i < run.to(); i++) {
      if (i > run.from()
          && ((heard.get(i).sequence() - heard.get(i - 1).sequence()) & 0xffff) != 1) {
        java.util.Arrays.fill(levels, UNKNOWN);
      }
      if (heard.get(i).message() instanceof SampleBlock block) {
        if (first) {
          begin(block);
        } else if ((block.known() & edgesOnly) != 0) {
          exam.ledger()
              .fails(
                  Duty.CHANGES,
                  "contacts %x report by edges only, and are in rows"
                      .formatted(block.known() & edgesOnly));
        }
        first = false;
      } else if (heard.get(i).message() instanceof EdgeBlock block) {
        changed(block);
      }
    }
  }

  private void begin(SampleBlock block) {
    for (int contact = 0; contact < Long.SIZE; contact++) {
      if ((block.known() >> contact & 1) == 1) {
        levels[contact] = (int) (block.levels(0) >> contact & 1);
      }
    }
  }

  private void changed(EdgeBlock block) {
    long edged = exam.contacts(c -> c.reports() != Reports.SAMPLED);
    for (int edge = 0; edge < block.edges(); edge++) {
      int contact = block.contact(edge);
      edges++;
      exam.ledger()
          .judge(
              Duty.CHANGES,
              (edged >> contact & 1) == 1,
              "an edge of contact %d, which reports none".formatted(contact));
      exam.ledger()
          .judge(
              Duty.CHANGES,
              levels[contact] != block.level(edge),
              "contact %d changed to level %d, at which it was"
                  .formatted(contact, block.level(edge)));
      levels[contact] = block.level(edge);
    }
  }
}
