package tripline.harness.rehearse.valve;

/** Seeded random numbers, the same on every machine: SplitMix64 and Marsaglia's polar method. */
public final class Chance {
  private long state;
  private double spare;
  private boolean hasSpare;

  /** A generator; equal seeds give equal numbers. */
  public Chance(long seed) {
    state = seed;
  }

  /** A generator of its own for one purpose; drawing from it does not disturb this one. */
  public Chance split(String purpose) {
    return new Chance(mix(state ^ mix(purpose.hashCode() * 0x9e37_79b9_7f4a_7c15L)));
  }

  /** 64 random bits. */
  public long bits() {
    state += 0x9e37_79b9_7f4a_7c15L;
    return mix(state);
  }

  /** Uniform in 0 (included) to 1 (excluded). */
  public double uniform() {
    return (bits() >>> 11) * 0x1.0p-53;
  }

  /** Uniform from low to high. */
  public double uniform(double low, double high) {
    return low + (high - low) * uniform();
  }

  /** +1 or -1. */
  public double sign() {
    return uniform() < 0.5 ? -1 : 1;
  }

  /** Standard normal deviate. */
  public double gaussian() {
    if (hasSpare) {
      hasSpare = false;
      return spare;
    }
    double a;
    double b;
    double s;
    do {
      a = 2 * uniform() - 1;
      b = 2 * uniform() - 1;
      s = a * a + b * b;
    } while (s >= 1 || s == 0);
    double scale = Math.sqrt(-2 * StrictMath.log(s) / s);
    spare = b * scale;
    hasSpare = true;
    return a * scale;
  }

  private static long mix(long bits) {
    long z = bits;
    z = (z ^ (z >>> 30)) * 0xbf58_476d_1ce4_e5b9L;
    z = (z ^ (z >>> 27)) * 0x94d0_49bb_1331_11ebL;
    return z ^ (z >>> 31);
  }
}
