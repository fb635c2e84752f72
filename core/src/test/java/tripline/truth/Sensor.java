package tripline.truth;

import tripline.job.SensorSide;

/**
 * A position sensor as built.
 *
 * @param side which side of the lost motion
 * @param turnsPerUnit handwheel turns per unit of reading as the job sheet states it; negative:
 *     falls while opening
 * @param resolution one count, units of the reading; 0 = none
 * @param noise standard deviation of its white noise, units of the reading
 * @param scaleError relative error of the true scale against {@code turnsPerUnit}
 * @param skewS position stamp minus contact stamp, s
 * @param offset reading at x = 0 (play as after closing), units
 * @param modulus the reading wraps here; 0 = never
 */
public record Sensor(
    SensorSide side,
    double turnsPerUnit,
    double resolution,
    double noise,
    double scaleError,
    double skewS,
    double offset,
    double modulus) {

  /** A plain sensor that counts handwheel turns. */
  public static Sensor turns(SensorSide side, double resolution, double noise) {
    return new Sensor(side, 1, resolution, noise, 0, 0, 0, 0);
  }

  public Sensor withScale(double newTurnsPerUnit, double relativeError) {
    return new Sensor(
        side, newTurnsPerUnit, resolution, noise, relativeError, skewS, offset, modulus);
  }

  public Sensor withSkew(double seconds) {
    return new Sensor(side, turnsPerUnit, resolution, noise, scaleError, seconds, offset, modulus);
  }

  public Sensor withOffset(double units, double wrapsAt) {
    return new Sensor(side, turnsPerUnit, resolution, noise, scaleError, skewS, units, wrapsAt);
  }

  /** Exact reading of a motion at a time: no noise, no counts, no wrap. */
  public double exact(Path path, double timeS) {
    double turns = side == SensorSide.HANDWHEEL ? path.handwheelAt(timeS) : path.driveAt(timeS);
    return reading(turns);
  }

  /** Exact reading for a position of the side it sits on. */
  public double reading(double turns) {
    return offset + turns / turnsPerUnit * (1 + scaleError);
  }

  /** What the logger reads, stamped {@code timeS}. */
  double sample(Path path, double timeS, Rng rng) {
    double r = exact(path, timeS - skewS);
    if (noise > 0) {
      r += noise * rng.gaussian();
    }
    if (resolution > 0) {
      r = Math.rint(r / resolution) * resolution;
    }
    if (modulus > 0) {
      r -= Math.floor(r / modulus) * modulus;
    }
    return r;
  }

  /** Standard deviation of one reading about the exact one, counts included, in turns. */
  double readingU() {
    return Math.sqrt(noise * noise + resolution * resolution / 12) * Math.abs(turnsPerUnit);
  }
}
