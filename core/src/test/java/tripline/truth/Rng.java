package tripline.truth;

/** Seeded random numbers, the same on every machine: SplitMix64 and Marsaglia's polar method. */
public final class Rng {
  private long state;
  private double spare;
  private boolean hasSpare;

  public Rng(long seed) {
    state = seed;
  }

  /** An independent stream that depends on this one's present state and on a label. */
  public Rng split(String label) {
    return new Rng(nextLong() ^ mix(label.hashCode() * 0x9E3779B97F4A7C15L));
  }

  public long nextLong() {
    state += 0x9E3779B97F4A7C15L;
    return mix(state);
  }

  /** Uniform in [0, 1). */
  public double uniform() {
    return (nextLong() >>> 11) * 0x1.0p-53;
  }

  /** Uniform in [low, high). */
  public double uniform(double low, double high) {
    return low + (high - low) * uniform();
  }

  /** Uniform in 0..n-1. */
  public int below(int n) {
    return (int) (uniform() * n);
  }

  public boolean chance(double probability) {
    return uniform() < probability;
  }

  /** Exponential with the given mean. */
  public double exponential(double mean) {
    return -mean * StrictMath.log(1 - uniform());
  }

  /** Standard normal. */
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

  private static long mix(long z) {
    z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return z ^ (z >>> 31);
  }
}
