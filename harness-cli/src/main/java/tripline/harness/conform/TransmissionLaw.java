package tripline.harness.conform;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tripline.link.Answer;
import tripline.link.Identity;
import tripline.link.Status;

/** What every message owes: whole, well formed, numbered, in one encoding, of one session. */
final class TransmissionLaw {
  private final Exam exam;
  private final List<Heard> heard;
  private final Ledger ledger;

  private TransmissionLaw(Exam exam) {
    this.exam = exam;
    this.heard = exam.witness().heard();
    this.ledger = exam.ledger();
  }

  static void judge(Exam exam) {
    TransmissionLaw law = new TransmissionLaw(exam);
    law.whole();
    law.sequence();
    law.oneEncoding();
    law.oneSession();
    law.answeredOnce();
  }

  private void whole() {
    ledger.judge(
        Duty.WHOLE,
        exam.damaged() == 0,
        "%d stretches of bytes were no message, %d bytes in all"
            .formatted(exam.damaged(), exam.witness().skipped()));
    List<String> strange = exam.witness().setAside();
    if (strange.isEmpty()) {
      ledger.holds(Duty.WELL_FORMED);
    }
    strange.forEach(what -> ledger.fails(Duty.WELL_FORMED, what));
    long wrap = 1L << exam.identity().clockBits();
    for (Heard each : heard) {
      long stamp = Times.tells(each.message()) ? Times.stamp(each.message()) : 0;
      ledger.judge(
          Duty.WELL_FORMED,
          stamp < wrap,
          "%s with stamp %d, on a clock of %d bits"
              .formatted(each.message().type().word(), stamp, exam.identity().clockBits()));
    }
  }

  private void sequence() {
    Witness witness = exam.witness();
    List<Long> dropped = new ArrayList<>();
    for (Heard each : heard) {
      if (each.message() instanceof Status status) {
        dropped.add(status.messagesDropped());
      }
    }
    long counted = dropped.isEmpty() ? 0 : dropped.get(dropped.size() - 1) - dropped.get(0);
    // What came damaged is missing as well, and judged elsewhere.
    long missing = exam.lost() - exam.damaged();
    ledger.judge(
        Duty.SEQUENCE,
        missing <= counted && witness.restarts() == 0,
        "%d messages missing, %d counted as dropped; it began anew %d times"
            .formatted(missing, counted, witness.restarts()));
  }

  private void oneEncoding() {
    ledger.holds(Duty.ENCODING);
    for (int i = 1; i < heard.size(); i++) {
      if (heard.get(i).encoding() != heard.get(i - 1).encoding() && !exam.switches().contains(i)) {
        ledger.fails(
            Duty.ENCODING,
            "%s came in %s unasked"
                .formatted(heard.get(i).message().type().word(), heard.get(i).encoding()));
      }
    }
  }

  private void oneSession() {
    long session = exam.identity().session();
    for (Heard each : heard) {
      long said =
          each.message() instanceof Identity identity
              ? identity.session()
              : each.message() instanceof Status status ? status.session() : session;
      ledger.judge(
          Duty.SESSION,
          said == session,
          "%s says session %d, another said %d"
              .formatted(each.message().type().word(), said, session));
    }
  }

  private void answeredOnce() {
    Map<Integer, Integer> answers = new HashMap<>();
    for (Heard each : heard) {
      if (each.message() instanceof Answer answer) {
        answers.merge(answer.to(), 1, Integer::sum);
      }
    }
    answers.forEach(
        (to, count) -> {
          int said = exam.talker().said(to);
          ledger.judge(
              Duty.ANSWERS,
              count <= said,
              "%d answers to command %d, which was said %d times".formatted(count, to, said));
        });
  }
}
