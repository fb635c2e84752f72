package tripline.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tripline.measure.Estimate;
import tripline.measure.Part;
import tripline.measure.Shape;
import tripline.result.Result.CamResult;
import tripline.result.Result.Measured;
import tripline.travel.PartNames;

/**
 * How lost motion changed, cam by cam.
 *
 * <p>A result's lost motion is a bound: the smallest way back over its cams, with the differentials
 * of those that could not be told from the smallest. Which cams these are hangs on the scatter of
 * the day, and no part of the figure's uncertainty says so; the difference of two bounds is
 * therefore less certain than their parts. The way back of one cam, the same in both results, holds
 * one differential, which cancels: what is left is lost motion. The mean over the cams is weighted
 * by own uncertainty and, where the cams scatter more than that, widened by the ratio (Birge).
 */
final class LostMotionMove {
  private static final String HANDWHEEL = "handwheel";
  private static final String SCATTER = "cams apart";

  private LostMotionMove() {}

  /**
   * Later less earlier lost motion, turns; empty where no cam was seen to come back in both
   * results, or where the sensor does not see lost motion.
   */
  static Optional<Estimate> of(Account before, Account after, Budgets budgets) {
    Measured then = seen(before);
    Measured now = seen(after);
    if (then == null || now == null) {
      return Optional.empty();
    }
    List<Estimate> moves = new ArrayList<>();
    for (CamResult cam : after.cams()) {
      Measured back = cam.differential();
      Measured earlier = Cams.find(before, cam).map(CamResult::differential).orElse(null);
      if (back != null && earlier != null) {
        Estimate later = budgets.afterBut(back, PartNames.PLAY).plus(now.value());
        moves.add(later.minus(budgets.beforeBut(earlier, PartNames.PLAY).plus(then.value())));
      }
    }
    return moves.isEmpty() ? Optional.empty() : Optional.of(mean(moves));
  }

  /** What a sensor on the handwheel side sees of it. */
  private static @Nullable Measured seen(Account account) {
    return account.travel().sensor().side().equals(HANDWHEEL)
        ? account.travel().lostMotion()
        : null;
  }

  private static Estimate mean(List<Estimate> moves) {
    Estimate mean = Estimate.weightedMean(moves);
    double squares = 0;
    for (Estimate move : moves) {
      double off = (move.value() - mean.value()) / move.ownU();
      squares += move.ownU() > 0 ? off * off : 0;
    }
    double birge = moves.size() < 2 ? 0 : squares / (moves.size() - 1);
    return birge <= 1
        ? mean
        : mean.with(Part.own(SCATTER, mean.ownU() * Math.sqrt(birge - 1), Shape.NORMAL));
  }
}
