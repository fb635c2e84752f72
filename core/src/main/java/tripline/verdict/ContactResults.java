package tripline.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tripline.assess.ContactJudgement;
import tripline.assess.ContactSeen;
import tripline.assess.Pooled;
import tripline.assess.Track;
import tripline.develop.DevelopmentChart;
import tripline.develop.Stretch.State;
import tripline.job.Contact;
import tripline.job.Direction;
import tripline.job.JobSheet;
import tripline.result.Result.ContactResult;
import tripline.result.Result.Stretch;
import tripline.result.Result.TripResult;
import tripline.sample.ContactState;

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
        closed(chart, channel, Direction.CLOSING),
        trips(judged.seen()));
  }

  private static List<TripResult> trips(ContactSeen seen) {
    List<TripResult> trips = new ArrayList<>();
    for (Track track : seen.tracks()) {
      for (Direction direction : Direction.values()) {
        track.pooled(direction).ifPresent(p -> trips.add(trip(track, direction, p)));
      }
    }
    return List.copyOf(trips);
  }

  private static TripResult trip(Track track, Direction direction, Pooled pooled) {
    ContactState to = track.toward(direction).get(0).trip().to();
    return new TripResult(
        track.edge().word().orElse(null),
        direction.word(),
        to.name().toLowerCase(Locale.ROOT),
        Figures.measured(pooled.mean()),
        pooled.strokes(),
        pooled.range());
  }

  private static List<Stretch> closed(DevelopmentChart chart, int channel, Direction direction) {
    return chart.stretches(channel, direction).stream()
        .filter(s -> s.state() == State.CLOSED)
        .map(s -> new Stretch(s.from(), s.to()))
        .toList();
  }
}
