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

  /** Mean bounce of mechanical switches by a published bench test, s: 1.557 ms (longest 6.2 ms). */
  private static final double BOUNCE_S = 0.001557;

  /** The most that can hide, in sample distances: an edge or two of every other one is seen. */
  private static final double CLOSE_SHARE = 0.7;

  /**
   * A hand may pause or hurry within a gap this long, which no fit across it can see, ns; shorter
   * ones the fit bridges honestly.
   */
  private static final long LONG_GAP_NS = 250_000_000;

  /**
   * Reading at a change: fit (normal), bracket or stamp resolution (rectangular over the gap, JCGM
   * 100 4.3.7), skew (one error for all changes of a logger, so common and signed by the speed).
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
    List<Part> parts = new ArrayList<>();
    parts.add(Part.own(PartNames.FIT, place.u(), Shape.NORMAL));
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
        parts.add(Part.own(PartNames.BOUNCE, Math.abs(speed) * unseenBounceS(gapS), Shape.NORMAL));
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
    return Optional.of(new Estimate(place.reading() + shift, parts));
  }

  /**
   * What bounce hides from samples T apart, s. A burst of length B catches a sample with chance
   * B/T, which shows the old state every other time; the change then seems to come (T + B)/2 later
   * than it did. With lengths spread exponentially about their mean m: u^2 = (m T^2 + 4 m^2 T + 6
   * m^3) / (8 T). Samples that lie closer than a burst see its first edges all the better.
   */
  private static double unseenBounceS(double gapS) {
    if (gapS <= 0) {
      return 0;
    }
    double m = BOUNCE_S;
    double square = (m * gapS * gapS + 4 * m * m * gapS + 6 * m * m * m) / (8 * gapS);
    return Math.min(Math.sqrt(square), CLOSE_SHARE * gapS);
  }

  private static boolean holds(Loss loss, long timeNs) {
    return loss.fromNs() < timeNs && timeNs < loss.toNs();
  }
}
