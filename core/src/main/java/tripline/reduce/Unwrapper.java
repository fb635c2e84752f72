package tripline.reduce;

/**
 * Undoes the wrap of a reading: of the readings a whole number of moduli apart, the one nearest to
 * the last.
 */
final class Unwrapper {
  private final double modulus;
  private final boolean wraps;
  private double offset;
  private double last = Double.NaN;

  /**
   * @param modulus the reading wraps here, &gt; 0; NaN for a reading that never wraps
   */
  Unwrapper(double modulus) {
    this.modulus = modulus;
    this.wraps = !Double.isNaN(modulus);
  }

  /** Unwraps the first readings of an array in place; NaN, no reading, stays. */
  void unwrap(double[] readings, int size) {
    if (wraps) {
      for (int i = 0; i < size; i++) {
        if (!Double.isNaN(readings[i])) {
          readings[i] = unwrap(readings[i]);
        }
      }
    }
  }

  double unwrap(double reading) {
    if (!wraps) {
      return reading;
    }
    if (!Double.isNaN(last)) {
      double step = reading - last;
      if (Math.abs(step) > modulus / 2) {
        offset -= Math.rint(step / modulus) * modulus;
      }
    }
    last = reading;
    return reading + offset;
  }

  /** Stands where another one of the same modulus stands. */
  void become(Unwrapper other) {
    offset = other.offset;
    last = other.last;
  }
}
