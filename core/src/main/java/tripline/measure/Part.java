package tripline.measure;

/**
 * One named part of a combined standard uncertainty (JCGM 100:2008 5.1).
 *
 * @param name what it comes from. For {@link Sharing#COMMON} it is the key of the error's source:
 *     two figures share the error exactly if they carry the same name, so a stop is {@code
 *     "stop:closed"} and not {@code "stop"} where two stops are in play.
 * @param u standard uncertainty in the unit of the figure, finite. Own parts: never negative.
 *     Common parts: <em>signed</em>, the change of the figure when the shared error grows by one
 *     standard deviation, so that sums and differences follow by plain addition (JCGM 100 5.2.2
 *     with correlation +1 or -1). A position measured away from a stop carries {@code -u} of it.
 * @param shape its law; all common parts of one name have the same
 * @param sharing own or common
 */
public record Part(String name, double u, Shape shape, Sharing sharing) {

  /**
   * @throws IllegalArgumentException if {@code u} is not finite, or negative for an own part
   */
  public Part {
    Finite.require(u, "standard uncertainty");
    if (sharing == Sharing.OWN && u < 0) {
      throw new IllegalArgumentException("own part " + name + " is negative: " + u);
    }
  }

  /** A part independent of all others. */
  public static Part own(String name, double u, Shape shape) {
    return new Part(name, u, shape, Sharing.OWN);
  }

  /** A part whose error is the same, up to the factor {@code signedU}, wherever the name occurs. */
  public static Part common(String name, double signedU, Shape shape) {
    return new Part(name, signedU, shape, Sharing.COMMON);
  }

  /** This part seen through a multiplication of the figure by an exact factor. */
  Part times(double factor) {
    double scaled = sharing == Sharing.OWN ? u * Math.abs(factor) : u * factor;
    return new Part(name, scaled, shape, sharing);
  }

  double variance() {
    return u * u;
  }
}
