package tripline.travel;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tripline.job.PositionChannel;
import tripline.measure.Estimate;
import tripline.measure.Part;
import tripline.measure.Shape;
import tripline.measure.TypeB;
import tripline.reduce.Change;
import tripline.reduce.Loss;
import tripline.reduce.Place;

/** The reading at which a contact changed, with the parts of its uncertainty. */
final class ChangeReading {
  private static final double NS_PER_S = 1e9;

  private ChangeReading() {}

  /**
   * A hand may pause or hurry within a gap this long, which no fit across it can see, ns; shorter
   * ones the fit bridges honestly.
   */
  private static final long LONG_GAP_NS = 250_000_000;

  /**
   * Reading at a change, corrected for the delay that unseen bounce causes in the mean (JCGM 100
   * 3.2.4): fit (normal), bracket or stamp resolution (rectangular over the gap, JCGM 100 4.3.7),
   * the spread of that delay, skew (one error for all changes of a logger, so common and signed by
   * the speed).
   *
   * @param scanNs the logger's scan period: a gap finer than half of it is a stamp's resolution
   * @param losses stretches with readings missing: within one the place is anywhere between the
   *     readings at its ends
   * @param shift added to the fitted reading, reading units
   * @return empty where no position is known
   */
  static Optional<Estimate> of(
      Change change, long scanNs, List<Loss> losses, PositionChannel channel, double shift) {
    Place place = change.place();
    if (!Double.isFinite(place.reading()) || !Double.isFinite(place.u())) {
      return Optional.empty();
    }
    double reading = place.reading() + shift;
    List<Part> parts = new ArrayList<>();
    parts.add(Part.own(PartNames.FIT, place.u(), place.law()));
    if (!change.motion().equals(Change.Motion.AT_REST)) {
      double speed = Double.isFinite(place.speed()) ? place.speed() : 0;
      double gapS = change.gapNs() / NS_PER_S;
      boolean stamped = change.gapNs() < scanNs / 2;
      parts.add(
          Part.own(
              stamped ? PartNames.RESOLUTION : PartNames.BRACKET,
              TypeB.between(0, Math.abs(speed) * gapS),
              Shape.RECTANGULAR));
      if (!stamped) {
        reading -= speed * UnseenBounce.lateS(gapS);
        parts.add(
            Part.own(PartNames.BOUNCE, Math.abs(speed) * UnseenBounce.uS(gapS), Shape.NORMAL));
      }
      parts.add(Part.common(PartNames.SKEW, speed * (channel.skewUNs() / NS_PER_S), Shape.NORMAL));
    }
    losses.stream()
        .filter(l -> l.what() == Loss.What.POSITION && holds(l, change.timeNs()))
        .filter(l -> l.toNs() - l.fromNs() > LONG_GAP_NS && Double.isFinite(l.moved()))
        .forEach(
            l ->
                parts.add(
                    Part.own(
                        PartNames.GAP, TypeB.between(0, Math.abs(l.moved())), Shape.RECTANGULAR)));
    return Optional.of(new Estimate(reading, parts));
  }

  private static boolean holds(Loss loss, long timeNs) {
    return loss.fromNs() < timeNs && timeNs < loss.toNs();
  }
}
