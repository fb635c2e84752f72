package tripline.reduce;

/**
 * Gathers many readings of a fit window into few slices of time, so that the fit costs by the slice
 * and not by the reading. A slice goes in as its mean, weighted by its readings, and as how they
 * scatter about their own straight line; what it loses is the slope within it: a few hundredths of
 * the variance of a place.
 */
final class Slices {
  private final FitWindow window;
  private final double widthTau;
  private final double[] means = new double[FitWindow.TERMS];
  private final double[] slopes = new double[FitWindow.TERMS];
  private final double[] curvatures = new double[FitWindow.TERMS];
  private double endTau;
  private int n;
  private double tau0;
  private double reading0;
  private double sumT;
  private double sumY;
  private double sumTt;
  private double sumTy;
  private double sumYy;

  /**
   * @param window takes the slices
   * @param slices over its whole width
   */
  Slices(FitWindow window, int slices) {
    this.window = window;
    this.widthTau = 2.0 / slices;
    this.endTau = -1 + widthTau;
  }

  /** A reading, in order of time. */
  void add(double tau, double reading) {
    if (tau >= endTau) {
      flush();
      endTau = widthTau * Math.floor(tau / widthTau) + widthTau;
    }
    if (n == 0) {
      tau0 = tau;
      reading0 = reading;
    }
    double t = tau - tau0;
    double y = reading - reading0;
    n++;
    sumT += t;
    sumY += y;
    sumTt += t * t;
    sumTy += t * y;
    sumYy += y * y;
    window.near(tau, reading);
  }

  /** Hands over what has been gathered. */
  void flush() {
    if (n == 0) {
      return;
    }
    double mean = sumY / n;
    double stt = sumTt - sumT * sumT / n;
    double sty = sumTy - sumT * mean;
    double scatter = sumYy - sumY * mean - (stt > 0 ? sty * sty / stt : 0);
    average(tau0 + sumT / n, stt / n);
    window.addSlice(means, reading0 + mean, n, Math.max(0, scatter));
    n = 0;
    sumT = 0;
    sumY = 0;
    sumTt = 0;
    sumTy = 0;
    sumYy = 0;
  }

  /**
   * Means of the polynomials over the slice: to the second order their value in the middle and half
   * their curvature times the variance of the times.
   */
  private void average(double middle, double variance) {
    Legendre.values(middle, means, FitWindow.TERMS);
    Legendre.slopes(means, slopes, FitWindow.TERMS);
    Legendre.curvatures(slopes, curvatures, FitWindow.TERMS);
    for (int k = 2; k < FitWindow.TERMS; k++) {
      means[k] += curvatures[k] * variance / 2;
    }
  }
}
