package tripline.study;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import tripline.truth.HandStyle;
import tripline.truth.Rng;

/**
 * What nobody can do better: a hand whose ripple is known exactly still wanders in speed, and the
 * best linear smoother of a path with spectrum S in white noise N errs by the integral of S N / (S
 * + N) (Wiener; the law of the wander is that of {@link tripline.truth.HandCrank}). Prints it over
 * the floor of a straight path, {@code RippleBound} without arguments.
 */
public final class RippleBound {
  /** Changes of aim a second, and the time constants that smooth them, s. */
  private static final double AIMS_PER_S = 0.5;

  private static final double AIM_S = 0.8;
  private static final double ARM_S = 0.12;
  private static final int STEPS = 4000;

  private RippleBound() {}

  public static void main(String[] args) {
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    double wander = HandStyle.somebody(new Rng(1), 0).wander();
    out.println("rate Hz  noise turn | error over floor at 0.3, 0.65, 1.0 turn/s");
    for (double noise : new double[] {0.003, 0.01}) {
      for (double rate : new double[] {200, 1000, 5000}) {
        out.printf(
            Locale.ROOT,
            "%7.0f %11.3f | %.2f %.2f %.2f%n",
            rate,
            noise,
            overFloor(noise, rate, 0.3, wander),
            overFloor(noise, rate, 0.65, wander),
            overFloor(noise, rate, 1.0, wander));
      }
    }
  }

  /** Rms error of the best smoother and the bracket over the floor. */
  static double overFloor(double noise, double rateHz, double speed, double wander) {
    double white = noise * noise / rateHz;
    double sum = 0;
    double low = Math.log(1e-2);
    double high = Math.log(3e3);
    for (int i = 0; i < STEPS; i++) {
      double w = Math.exp(low + (high - low) * (i + 0.5) / STEPS);
      double path = speed * speed * wander * wander * spectrum(w) / (w * w);
      sum += path * white / (path + white) * w * (high - low) / STEPS;
    }
    double bracket = speed * speed / (12 * rateHz * rateHz);
    return Math.sqrt((sum / Math.PI + bracket) / (white + bracket));
  }

  /** Two-sided spectrum of the relative speed of unit variance of aim. */
  private static double spectrum(double w) {
    double aim = 2 * AIMS_PER_S / (AIMS_PER_S * AIMS_PER_S + w * w);
    return aim / (1 + AIM_S * AIM_S * w * w) / (1 + ARM_S * ARM_S * w * w);
  }
}
