package tripline.develop;

import java.util.Optional;
import java.util.OptionalDouble;
import tripline.job.End;
import tripline.job.PositionChannel;
import tripline.measure.Estimate;
import tripline.reduce.Movement.Rest;
import tripline.sample.ContactState;
import tripline.sample.Drive;
import tripline.travel.Leg;
import tripline.travel.RecordingTrace;
import tripline.travel.StopEvents;
import tripline.travel.Survey;
import tripline.travel.TravelMap;

/** What ended a stroke, hand or motor. */
final class StrokeEnd {
  /** A stroke that ends this near a known hard stop ended on it, turns ... */
  private static final double AT_STOP_TURNS = 0.05;

  /** ... or within this many standard uncertainties of one found by feel. */
  private static final double AT_STOP_U = 5;

  private final Survey survey;
  private final TravelMap map;

  StrokeEnd(Survey survey, TravelMap map) {
    this.survey = survey;
    this.map = map;
  }

  StopCause cause(Leg leg, StopEvents events) {
    End end = leg.direction().toward();
    PositionChannel position = survey.sheet().position();
    return new StopCause(
        events,
        new StopCause.Read(
            survey.channels().limits(end).stream().anyMatch(c -> wasClosed(leg, c)),
            survey.channels().torque(end).map(c -> wasClosed(leg, c)).orElse(false),
            survey.channels().motor(end).map(c -> wasClosed(leg, c)).orElse(false)),
        survey.sheet().end(end).seat(),
        position.skewNs(),
        position.skewUNs());
  }

  /** A channel tells something if its contact was closed while the valve ran. */
  private boolean wasClosed(Leg leg, int channel) {
    String name = survey.sheet().channels().contacts().get(channel);
    RecordingTrace recording = survey.recordings().get(leg.recording());
    long midNs = leg.mainMove().fromNs() + (leg.mainMove().toNs() - leg.mainMove().fromNs()) / 2;
    return new ContactTimeline(recording.trace(), name)
        .at(midNs)
        .equals(Optional.of(ContactState.CLOSED));
  }

  Stroke.StoppedBy stoppedBy(Leg leg, StopCause cause) {
    if (!leg.finished()) {
      return Stroke.StoppedBy.UNKNOWN;
    }
    if (survey.drive(leg) == Drive.HAND) {
      return isAtStop(leg) ? Stroke.StoppedBy.HARD_STOP : Stroke.StoppedBy.OPERATOR;
    }
    Stroke.StoppedBy stoppedBy = cause.stoppedBy();
    boolean noContact = stoppedBy == Stroke.StoppedBy.OPERATOR || cause.isPowerLost();
    return noContact && isAtStop(leg) ? Stroke.StoppedBy.HARD_STOP : stoppedBy;
  }

  private boolean isAtStop(Leg leg) {
    End end = leg.direction().toward();
    double allowed = Math.max(AT_STOP_TURNS, AT_STOP_U * survey.sheet().end(end).stopUTurns());
    double reading = leg.rest().map(Rest::reading).orElse(leg.to());
    OptionalDouble stood = map.x(leg.recording(), reading, leg.direction());
    Optional<Estimate> stop = map.stop(end);
    if (stood.isEmpty() || stop.isEmpty()) {
      return false;
    }
    double shortBy = (stop.get().value() - stood.getAsDouble()) * leg.direction().sign();
    return shortBy <= allowed;
  }
}
