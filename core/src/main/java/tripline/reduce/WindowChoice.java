package tripline.reduce;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Which of an instant's windows tells its position. The widest that the candidates can follow and
 * that agrees with every narrower one (Lepski's choice of a bandwidth): a bend near the instant
 * shows in the position long before it shows in the residuals. Where the drive starts or is stopped
 * close by ({@link Kink}), the side on which it moves evenly is believed alone: no smooth path
 * follows the kink, and a change that stops its own motor lies on it.
 */
final class WindowChoice {
  /** Points from which a side alone is believed. */
  private static final int LEAST_ONE_SIDED = 6;

  /** Disagreement with a narrower window, in its standard deviations, that discards a wider one. */
  private static final double AGREE_SIGMAS = 3;

  private WindowChoice() {}

  /**
   * The fit of the window chosen; null where there is nothing to fit.
   *
   * @param windows widest first, one-sided ones anywhere
   * @param fit fits one
   */
  static @Nullable WindowFit of(List<FitWindow> windows, Function<FitWindow, WindowFit> fit) {
    for (FitWindow window : windows) {
      if (oneSided(window) && window.points >= LEAST_ONE_SIDED) {
        WindowFit side = fit.apply(window);
        if (side.best() <= PathPrior.STEADIEST && !side.misfits()) {
          return side;
        }
      }
    }
    List<WindowFit> fits = new ArrayList<>(windows.size());
    for (FitWindow window : windows) {
      boolean enough = window.points > FitWindow.TERMS || (fits.isEmpty() && window.points >= 2);
      if (enough && !oneSided(window)) {
        fits.add(fit.apply(window));
      }
    }
    return twoSided(fits);
  }

  private static boolean oneSided(FitWindow window) {
    return window.reach != FitWindow.Reach.BOTH_SIDES;
  }

  private static @Nullable WindowFit twoSided(List<WindowFit> fits) {
    for (int i = 0; i < fits.size(); i++) {
      if (!fits.get(i).misfits() && agrees(fits, i)) {
        return sharpest(fits, i);
      }
    }
    return fits.isEmpty() ? null : fits.get(fits.size() - 1);
  }

  /** A narrower window knows more where the path bends more than a wide one can follow. */
  private static WindowFit sharpest(List<WindowFit> fits, int widest) {
    WindowFit sharpest = fits.get(widest);
    for (WindowFit narrower : fits.subList(widest + 1, fits.size())) {
      if (narrower.misfits()
          || narrower.variance[narrower.best()] >= sharpest.variance[sharpest.best()]) {
        break;
      }
      sharpest = narrower;
    }
    return sharpest;
  }

  private static boolean agrees(List<WindowFit> fits, int wide) {
    WindowFit fit = fits.get(wide);
    double value = fit.value[fit.best()];
    for (WindowFit narrow : fits.subList(wide + 1, fits.size())) {
      int best = narrow.best();
      if (Math.abs(narrow.value[best] - value) > AGREE_SIGMAS * Math.sqrt(narrow.variance[best])) {
        return false;
      }
    }
    return true;
  }
}
