package tripline.truth;

/**
 * How a contact bounces. The length of a burst is {@code mostS * u^p} with u uniform, which has the
 * stated mean and never exceeds the most.
 *
 * @param meanS mean length of a burst, s
 * @param mostS longest burst, s; 0 = never bounces
 * @param toggleS usual distance of the burst's edges, s
 */
public record Bounce(double meanS, double mostS, double toggleS) {
  /** Published bench test of mechanical switches: mean 1.557 ms, longest 6.2 ms. */
  public static final Bounce PUBLISHED = new Bounce(0.001557, 0.0062, 0.0004);

  /** An ideal contact. */
  public static final Bounce NONE = new Bounce(0, 0, 1);

  /** A burnt or loose contact: tens of ms. */
  public static final Bounce CHATTER = new Bounce(0.045, 0.080, 0.002);

  /** Length of one burst, s. */
  double length(Rng rng) {
    return mostS == 0 ? 0 : mostS * StrictMath.pow(rng.uniform(), mostS / meanS - 1);
  }
}
