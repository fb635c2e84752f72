package tripline.reduce;

/**
 * How an even scan sees the count edges of an even motion: each edge is timed too early or too late
 * by up to half a scan, but not by chance. From edge to edge the error runs along a saw-tooth,
 * advancing by the fraction that is left of the scans a count takes. Most of it averages out far
 * better than chance would; where a count takes a whole number of scans none of it does.
 *
 * <p>The saw-tooth is a sum of sinusoids of amplitude step / (pi k) (Fourier series of the rounding
 * error), of which noise takes exp(-2 (pi k s / step)²) away; the phase is unknown.
 */
final class SamplingBeat {
  /** Sinusoids that are followed; the rest, a seventh of the variance, is taken for chance. */
  private static final int WAVES = 4;

  private final double perEdge;
  private final double step;
  private final double noise;
  private final double weight;
  private final double jitter;
  private final double[][] cos = new double[WAVES][FitWindow.TERMS];
  private final double[][] sin = new double[WAVES][FitWindow.TERMS];

  /** Largest departure from even motion that leaves the saw-tooth as it is, reading units. */
  final double even;

  /**
   * @param scansPerCount scans a count takes
   * @param step way gone between two scans, reading units
   * @param noise standard deviation of a reading before it is counted, reading units
   * @param jitter standard deviation of a scan about an even spacing, in scans
   * @param weight of every edge in the fit: its inverse variance by step and noise
   */
  SamplingBeat(double scansPerCount, double step, double noise, double jitter, double weight) {
    perEdge = 2 * Math.PI * scansPerCount;
    this.step = step;
    this.noise = noise;
    this.jitter = jitter;
    this.weight = weight;
    even = step / 8;
  }

  /** Share of the variance of a sinusoid that noise of so many of its wavelengths leaves. */
  static double remains(double noise) {
    double turns = 2 * Math.PI * noise;
    return Math.exp(-turns * turns);
  }

  /**
   * An edge of the window.
   *
   * @param number counted from anywhere in order of motion
   */
  void add(int number, double[] polynomials) {
    for (int k = 0; k < WAVES; k++) {
      double angle = (k + 1) * perEdge * number;
      double c = weight * Math.cos(angle);
      double s = weight * Math.sin(angle);
      for (int i = 0; i < FitWindow.TERMS; i++) {
        cos[k][i] += c * polynomials[i];
        sin[k][i] += s * polynomials[i];
      }
    }
  }

  /**
   * What the sinusoids add to the variance of an estimate beyond what errors of their size would by
   * chance; less than 0 where they average out.
   *
   * @param z the solution: the estimate gives edge i z' p(i) times its weight
   * @param byChance its variance where an edge has the variance that its weight says
   * @param scatter variance of an edge seen, relative to that; what is beyond is taken for noise
   */
  double beyondChance(double[] z, int n, double byChance, double scatter) {
    double unexplained = (scatter - 1) / weight;
    double blur = Math.hypot((noise + unexplained / (EdgeTimer.FLICKER * step)) / step, jitter);
    double sum = 0;
    for (int k = 0; k < WAVES; k++) {
      double c = 0;
      double s = 0;
      for (int i = 0; i < n; i++) {
        c += z[i] * cos[k][i];
        s += z[i] * sin[k][i];
      }
      double amplitude = step / (Math.PI * (k + 1));
      sum +=
          amplitude * amplitude / 2 * remains((k + 1) * blur) * (c * c + s * s - weight * byChance);
    }
    return sum;
  }
}
