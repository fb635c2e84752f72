package tripline.travel;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import tripline.job.Contact;
import tripline.job.End;
import tripline.job.EndSetting;
import tripline.job.TravelPlan;
import tripline.reduce.Movement.Rest;
import tripline.sample.ContactState;
import tripline.sample.Drive;

/**
 * Hard stops by the plateau of a hand stroke. A rest counts if it ends a hand stroke, lies beyond
 * every change seen in that direction, is as far out as any hand stroke of the same position zero
 * ever went, and either follows shortly on the trip of the end's limit cam or was reached several
 * times at the same place, with a reach between both ends as the sheet's span has it. Pauses and
 * turns in mid-travel fail one of these; motor strokes are never asked.
 */
final class PlateauStops {
  /** How far beyond backoff and tolerance a stop may follow on the limit cam's trip, turns. */
  private static final double FOLLOWS_TURNS = 1.0;

  /** Touches of one stop agree within this, turns, or within {@link #AGREE_U}. */
  private static final double AGREE_TURNS = 0.04;

  /** The same in standard uncertainties of a stop found by feel. */
  private static final double AGREE_U = 5;

  /** Reach and span agree within this share of the span, or within its tolerance. */
  private static final double SPAN_SHARE = 0.1;

  private final Survey survey;
  private final int frame;
  private final double turnsPerUnit;

  PlateauStops(Survey survey, int frame) {
    this.survey = survey;
    this.frame = frame;
    turnsPerUnit = survey.sheet().position().turnsPerUnit();
  }

  /** Touches of one end, of all recordings of the frame. */
  List<Touch> touches(End end) {
    List<Touch> candidates = new ArrayList<>();
    boolean tripFollowed = false;
    double furthest = furthest(end);
    double agree = agreeTurns(survey.sheet().end(end));
    double lastChange =
        changes(end).mapToDouble(p -> outward(end, p)).max().orElse(Double.NEGATIVE_INFINITY);
    for (Leg leg : handLegs(end)) {
      if (leg.finished()) {
        Optional<Rest> rest = leg.rest().filter(r -> furthest - outward(end, r) <= agree);
        if (rest.isPresent() && lastChange <= outward(end, rest.get())) {
          candidates.add(new Touch(end, HardStop.Source.PLATEAU, leg.recording(), rest.get()));
          tripFollowed |= followsTrip(end, outward(end, rest.get()));
        }
      }
    }
    boolean repeated = candidates.size() > 1 && isExpectedSpan();
    return tripFollowed || repeated ? candidates : List.of();
  }

  /** Hand strokes reach as far as the sheet's span; never where it states none. */
  private boolean isExpectedSpan() {
    TravelPlan plan = survey.sheet().travel();
    if (plan.spanTurns().isEmpty()) {
      return false;
    }
    double span = plan.spanTurns().getAsDouble();
    double allowed = Math.max(plan.spanToleranceTurns().orElse(0), SPAN_SHARE * span);
    return Math.abs(furthest(End.CLOSED) + furthest(End.OPEN) - span) <= allowed;
  }

  private List<Leg> handLegs(End end) {
    return survey.legs().stream()
        .filter(leg -> survey.frames().frame(leg.recording()) == frame)
        .filter(leg -> leg.direction() == end.approach())
        .filter(leg -> survey.drive(leg) == Drive.HAND)
        .toList();
  }

  /** How near to each other touches of one stop are, turns. */
  static double agreeTurns(EndSetting end) {
    return Math.max(AGREE_TURNS, AGREE_U * end.stopUTurns());
  }

  /** Turns toward the end, rising outward. */
  private double outward(End end, Rest rest) {
    return rest.reading() * turnsPerUnit * end.approach().sign();
  }

  private double furthest(End end) {
    return handLegs(end).stream()
        .flatMap(leg -> leg.rest().stream())
        .mapToDouble(rest -> outward(end, rest))
        .max()
        .orElse(Double.NEGATIVE_INFINITY);
  }

  private boolean followsTrip(End end, double outwardTurns) {
    EndSetting setting = survey.sheet().end(end);
    double most = setting.backoffTurns() + setting.toleranceTurns() + FOLLOWS_TURNS;
    return changes(end)
        .filter(p -> isTripOfEnd(end, p))
        .anyMatch(p -> outwardTurns - outward(end, p) <= most);
  }

  private Stream<Passage> changes(End end) {
    return survey.passages().stream()
        .filter(p -> survey.frames().frame(p.recording()) == frame && survey.isContact(p))
        .filter(p -> p.direction().equals(Optional.of(end.approach())) && p.reading().isPresent());
  }

  private double outward(End end, Passage passage) {
    return survey.turns(passage.reading().orElseThrow()).value() * end.approach().sign();
  }

  /**
   * A limit contact that opened, whichever channel it is wired to, or any contact of the limit cam.
   */
  private boolean isTripOfEnd(End end, Passage passage) {
    Contact contact = survey.contact(passage).orElseThrow();
    boolean limitOpened =
        contact.role().limitOf().isPresent() && passage.change().to() == ContactState.OPEN;
    return limitOpened
        || survey.sheet().contacts().stream()
            .anyMatch(
                c -> c.cam().equals(contact.cam()) && c.role().limitOf().equals(Optional.of(end)));
  }
}
