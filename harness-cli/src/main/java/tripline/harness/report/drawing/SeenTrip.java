package tripline.harness.report.drawing;

import java.util.List;
import java.util.stream.Stream;
import tripline.result.Result;
import tripline.result.Result.ChangeResult;

/**
 * Where a contact was seen to change in one direction of the judged setting.
 *
 * @param x mean over the strokes, turns
 * @param half half-width of the 95 % interval of the least certain of them, turns
 */
record SeenTrip(double x, double half) {
  /** Normal 95 % interval, where a change carries no interval of its own. */
  private static final double NORMAL_95 = 1.959964;

  /** One for changes to open and one for those to closed; a window has both in one direction. */
  static List<SeenTrip> of(Result result, String contact, String direction) {
    int setting = Math.max(0, result.settings().size() - 1);
    return Stream.of("open", "closed")
        .map(
            to ->
                result.changes().stream()
                    .filter(c -> c.contact().equals(contact) && c.to().equals(to))
                    .filter(c -> direction.equals(c.direction()) && c.setting() == setting)
                    .filter(c -> !c.atRest() && c.position() != null)
                    .toList())
        .filter(changes -> !changes.isEmpty())
        .map(SeenTrip::mean)
        .toList();
  }

  private static SeenTrip mean(List<ChangeResult> changes) {
    double sum = 0;
    double half = 0;
    for (ChangeResult change : changes) {
      sum += position(change);
      half = Math.max(half, half(change));
    }
    return new SeenTrip(sum / changes.size(), half);
  }

  static double position(ChangeResult change) {
    Double position = change.position();
    if (position == null) {
      throw new IllegalArgumentException("a change without a position is not drawn");
    }
    return position;
  }

  static double half(ChangeResult change) {
    if (change.estimate() != null) {
      return change.estimate().u95();
    }
    return change.u() == null ? 0 : NORMAL_95 * change.u();
  }
}
