package tripline.live;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tripline.assess.Assessment;
import tripline.assess.Edge;
import tripline.assess.TripTarget;
import tripline.job.Contact;
import tripline.job.End;
import tripline.job.EndSetting;
import tripline.job.JobSheet;
import tripline.live.Task.Kind;
import tripline.measure.Estimate;

/** The trip points of a sheet where they are meant to be. */
final class TripPoints {
  private final LiveAnswer answer;
  private final JobSheet sheet;

  private TripPoints(LiveAnswer answer) {
    this.answer = answer;
    this.sheet = answer.sheet();
  }

  /** The limits of both ends, then the other trip points in sheet order. */
  static List<TripPoint> of(LiveAnswer answer) {
    return new TripPoints(answer).all();
  }

  private List<TripPoint> all() {
    List<TripPoint> points = new ArrayList<>();
    for (End end : End.values()) {
      limit(end).ifPresent(contact -> points.add(end(end, contact)));
    }
    List<String> limits = points.stream().map(TripPoint::cam).toList();
    Assessment assessment = answer.assessment();
    assessment.judged().cams().stream()
        .map(cam -> cam.target())
        .filter(target -> !limits.contains(target.cam()))
        .forEach(target -> first(target.cam()).ifPresent(c -> points.add(midTravel(target, c))));
    return points;
  }

  private Optional<Contact> limit(End end) {
    return sheet.contacts().stream()
        .filter(c -> c.role().limitOf().equals(Optional.of(end)))
        .findFirst();
  }

  private Optional<Contact> first(String cam) {
    return sheet.contacts().stream().filter(c -> c.cam().equals(cam)).findFirst();
  }

  private TripPoint end(End end, Contact limit) {
    EndSetting setting = sheet.end(end);
    double inward = setting.backoffTurns() * -end.approach().sign();
    return new TripPoint(
        Edge.ONLY,
        end,
        Kind.END,
        limit,
        place(answer.confirmedStop(end).map(stop -> stop.plus(inward))),
        setting.backoffTurns(),
        setting.toleranceTurns());
  }

  private TripPoint midTravel(TripTarget target, Contact contact) {
    double span =
        answer
            .assessment()
            .development()
            .coordinate()
            .span()
            .map(Estimate::value)
            .orElse(sheet.travel().spanTurns().orElse(0));
    return new TripPoint(
        target.edge(),
        target.from(),
        Kind.MID_TRAVEL,
        contact,
        place(target.x()),
        target.plan().distanceTurns(span),
        target.toleranceTurns().orElse(0));
  }

  private static OptionalDouble place(Optional<Estimate> x) {
    return x.isPresent() ? OptionalDouble.of(x.get().value()) : OptionalDouble.empty();
  }
}
