package tripline.verdict;

import java.util.List;
import tripline.assess.ContactJudgement;
import tripline.develop.DevelopmentChart;
import tripline.develop.Stretch.State;
import tripline.job.Contact;
import tripline.job.Direction;
import tripline.job.JobSheet;
import tripline.result.Result.ContactResult;
import tripline.result.Result.Stretch;

/** Contacts as the result writes them; the stretches are those of the contact's own channel. */
final class ContactResults {
  private ContactResults() {}

  static ContactResult of(ContactJudgement judged, JobSheet sheet, DevelopmentChart chart) {
    Contact contact = judged.contact();
    int channel = sheet.channels().indexOf(contact.channel());
    return new ContactResult(
        contact.name(),
        contact.role().word(),
        contact.cam(),
        judged.decision(),
        judged.asCharted(),
        judged.exercised(),
        Figures.number(judged.worstSettleS()),
        closed(chart, channel, Direction.OPENING),
        closed(chart, channel, Direction.CLOSING));
  }

  private static List<Stretch> closed(DevelopmentChart chart, int channel, Direction direction) {
    return chart.stretches(channel, direction).stream()
        .filter(s -> s.state() == State.CLOSED)
        .map(s -> new Stretch(s.from(), s.to()))
        .toList();
  }
}
