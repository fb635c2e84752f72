package tripline.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import tripline.develop.Development;
import tripline.develop.Stroke;
import tripline.develop.Trip;
import tripline.job.Direction;
import tripline.reduce.Disturbance;
import tripline.reduce.Trace;

/**
 * Finds changes of state away from any trip point of their contact: disturbances that did not
 * settle, settled ones that were taken back, and settled ones that have no place in the chart.
 */
final class Strangers {
  /** Nearer than this to a trip point is the contact's own flutter, not a loose wire, turns. */
  private static final double NEAR_TURNS = 0.15;

  /** The same in time, s: hand or motor crosses a contact's own movement in less. */
  private static final double NEAR_S = 0.25;

  private final Development development;
  private final List<TripTarget> targets;
  private final int setting;

  Strangers(Development development, List<TripTarget> targets, int setting) {
    this.development = development;
    this.targets = targets;
    this.setting = setting;
  }

  List<Away> of(ContactSeen contact) {
    List<Away> all = new ArrayList<>();
    for (Passage passage : contact.observed().passages()) {
      for (Passage.Blip blip : passage.blips()) {
        add(contact, blip.there(), OptionalDouble.of(blip.lengthS()), all);
      }
    }
    contact.strays().forEach(s -> add(contact, s.trip(), OptionalDouble.empty(), all));
    for (int recording = 0; recording < development.recordings().size(); recording++) {
      disturbances(contact, recording, all);
    }
    return List.copyOf(all);
  }

  private void add(ContactSeen contact, Trip trip, OptionalDouble lengthS, List<Away> all) {
    OptionalDouble x =
        trip.x().isPresent()
            ? OptionalDouble.of(trip.x().orElseThrow().value())
            : OptionalDouble.empty();
    if (isAway(contact, trip.recording(), trip.timeS(), x)) {
      all.add(new Away(trip.recording(), trip.stroke(), trip.timeS(), lengthS, x));
    }
  }

  private void disturbances(ContactSeen contact, int recording, List<Away> all) {
    Trace trace = development.recordings().get(recording).trace();
    @Nullable ReadingMap map = null;
    for (Disturbance disturbance : trace.disturbances()) {
      double timeS = (disturbance.fromNs() - trace.firstNs()) * 1e-9;
      if (disturbance.channel() != contact.observed().channel()
          || settingAt(recording, timeS) != setting) {
        continue;
      }
      Optional<Stroke> stroke = strokeAt(recording, timeS);
      map = map == null ? ReadingMap.of(development, recording) : map;
      OptionalDouble x =
          map.x(
              disturbance.place().reading(),
              stroke.map(Stroke::direction).orElse(Direction.OPENING));
      if (isAway(contact, recording, timeS, x)) {
        double lengthS = (disturbance.toNs() - disturbance.fromNs()) * 1e-9;
        int number = stroke.map(Stroke::number).orElse(-1);
        all.add(new Away(recording, number, timeS, OptionalDouble.of(lengthS), x));
      }
    }
  }

  private boolean isAway(ContactSeen contact, int recording, double timeS, OptionalDouble x) {
    boolean soon =
        contact.tracks().stream()
            .flatMap(t -> t.crossings().stream())
            .anyMatch(
                c ->
                    c.trip().recording() == recording
                        && Math.abs(c.trip().timeS() - timeS) < NEAR_S);
    return !soon && (x.isEmpty() || !nearTripPoint(contact, x.getAsDouble()));
  }

  private boolean nearTripPoint(ContactSeen contact, double x) {
    return targets.stream()
        .filter(t -> t.cam().equals(contact.contact().cam()))
        .anyMatch(t -> nearTripPoint(contact, t, x));
  }

  private boolean nearTripPoint(ContactSeen contact, TripTarget target, double x) {
    double reach =
        Math.max(NEAR_TURNS, Math.min(target.toleranceTurns().orElse(0), 2 * NEAR_TURNS));
    for (Direction direction : Direction.values()) {
      Optional<CamPlace> place = CamPlace.of(target, List.of(contact), direction);
      if (place.isPresent() && Math.abs(place.orElseThrow().x() - x) < reach) {
        return true;
      }
    }
    return false;
  }

  private Optional<Stroke> strokeAt(int recording, double timeS) {
    return development.strokes().stream()
        .filter(s -> s.recording() == recording && s.startS() <= timeS && timeS <= s.endS())
        .findFirst();
  }

  private int settingAt(int recording, double timeS) {
    int found = 0;
    for (tripline.develop.Setting candidate : development.settings()) {
      boolean begun =
          candidate.recording() < recording
              || (candidate.recording() == recording && candidate.fromS() <= timeS);
      found = begun ? candidate.number() : found;
    }
    return found;
  }
}
