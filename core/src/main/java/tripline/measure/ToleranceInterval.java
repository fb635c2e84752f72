package tripline.measure;

import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Where future trips will fall, from the few that were made: two-sided statistical tolerance
 * interval (ISO 16269-6, mean and standard deviation unknown, normal law assumed) and what it says
 * against limits.
 *
 * @param n trips, at least 2
 * @param mean of the trips
 * @param sd standard deviation used, at least 0
 * @param share of future trips the interval is to hold, between 0 and 1
 * @param confidence that it does, between 0 and 1
 */
public record ToleranceInterval(int n, double mean, double sd, double share, double confidence) {
  private static final double LEAST_SHARE = 0.01;
  private static final double MOST_SHARE = 0.9999;

  /**
   * @throws IllegalArgumentException for fewer than two trips or figures out of range
   */
  public ToleranceInterval {
    Finite.requireAtLeast(2, n, "trips of a tolerance interval");
    Finite.require(mean, "mean");
    Finite.requireNotNegative(sd, "standard deviation");
    Finite.requireProbability(share, "share");
    Finite.requireProbability(confidence, "confidence");
  }

  /**
   * The interval of some trips.
   *
   * @param leastSd smallest believable standard deviation, at least 0: trips that agree by luck, or
   *     because the encoder is coarse, claim no more than one can measure
   */
  public static ToleranceInterval of(
      Moments trips, double leastSd, double share, double confidence) {
    Finite.requireAtLeast(2, trips.n(), "trips of a tolerance interval");
    return new ToleranceInterval(
        trips.n(), trips.mean(), Math.max(trips.sd(), leastSd), share, confidence);
  }

  /** Factor k of the interval. */
  public double factor() {
    return ToleranceFactor.twoSided(n, share, confidence);
  }

  /** Half-width k s. */
  public double halfWidth() {
    return sd == 0 ? 0 : factor() * sd;
  }

  /**
   * Accept if the whole interval, widened by the guard, is within the limits. Reject if even an
   * optimistic reading of the trips leaves less than the share within the limits, widened by the
   * guard: the one-sided test of that hypothesis at (1 - confidence) / 2 on each side. Else
   * undecided.
   *
   * @param guard guard band for what every trip has in common (the stop, the scale) and no number
   *     of strokes reduces, at least 0
   */
  public Decision decide(Limits limits, double guard) {
    Finite.requireNotNegative(guard, "guard band");
    double below = mean - limits.lower();
    double above = limits.upper() - mean;
    double half = halfWidth();
    if (below - guard >= half && above - guard >= half) {
      return Decision.ACCEPT;
    }
    double margin = Math.min(below, above) + guard;
    if (sd == 0) {
      return margin < 0 ? Decision.REJECT : Decision.UNDECIDED;
    }
    double optimistic = ToleranceFactor.oneSided(n, share, 0.5 * (1 - confidence));
    return margin < optimistic * sd ? Decision.REJECT : Decision.UNDECIDED;
  }

  /**
   * The statement these trips do support: the largest share of future trips of which it can be
   * said, with the stated confidence, that they fall within the limits. Two-sided about the mean,
   * so what the farther limit leaves over is not counted.
   *
   * @param guard as for {@link #decide}
   * @return between {@value #LEAST_SHARE} and {@value #MOST_SHARE}; empty if not even the least
   */
  public OptionalDouble supportedShare(Limits limits, double guard) {
    Finite.requireNotNegative(guard, "guard band");
    double room = Math.min(mean - limits.lower(), limits.upper() - mean) - guard;
    if (room < 0 || (sd > 0 && room < sd * factorOf(LEAST_SHARE))) {
      return OptionalDouble.empty();
    }
    if (sd == 0 || room >= sd * factorOf(MOST_SHARE)) {
      return OptionalDouble.of(MOST_SHARE);
    }
    return OptionalDouble.of(Roots.between(LEAST_SHARE, MOST_SHARE, p -> sd * factorOf(p) - room));
  }

  private double factorOf(double ofShare) {
    return ToleranceFactor.twoSided(n, ofShare, confidence);
  }

  /** The same mean and standard deviation, had they come from another number of trips. */
  public ToleranceInterval withTrips(int trips) {
    return new ToleranceInterval(trips, mean, sd, share, confidence);
  }

  /**
   * How many trips in all would decide, should mean and standard deviation stay as they are: the
   * smallest number not below n with a decision, or empty if {@code most} would not do.
   *
   * @param most largest number worth making
   */
  public OptionalInt tripsToDecide(Limits limits, double guard, int most) {
    if (decide(limits, guard) != Decision.UNDECIDED) {
      return OptionalInt.of(n);
    }
    if (most <= n || withTrips(most).decide(limits, guard) == Decision.UNDECIDED) {
      return OptionalInt.empty();
    }
    // Factors shrink toward the population's with every trip, so a decision once reached stays.
    int undecided = n;
    int decided = most;
    while (decided - undecided > 1) {
      int middle = (undecided + decided) >>> 1;
      if (withTrips(middle).decide(limits, guard) == Decision.UNDECIDED) {
        undecided = middle;
      } else {
        decided = middle;
      }
    }
    return OptionalInt.of(decided);
  }
}
