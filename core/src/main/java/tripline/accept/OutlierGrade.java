package tripline.accept;

import java.util.Locale;
import tripline.measure.Grubbs;

/** How far one value stands out of its series (ISO 5725-2 7.3.4). */
public enum OutlierGrade {
  /** As far as one of so many may. */
  NONE,
  /** Beyond the critical value at 5 %: it stays, and is marked. */
  STRAGGLER,
  /** Beyond that at 1 %: it stays as well, but nothing rests on the normal law any more. */
  OUTLIER;

  /** Risk of calling a right value a straggler. */
  public static final double STRAGGLER_ALPHA = 0.05;

  /** Risk of calling a right value an outlier. */
  public static final double OUTLIER_ALPHA = 0.01;

  /** Grade of the value that a test found. */
  public static OutlierGrade of(Grubbs grubbs) {
    return grubbs.outlier(OUTLIER_ALPHA)
        ? OUTLIER
        : grubbs.outlier(STRAGGLER_ALPHA) ? STRAGGLER : NONE;
  }

  /** As the result writes it. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
