package tripline.travel;

import java.util.ArrayList;
import java.util.List;
import tripline.measure.Estimate;
import tripline.measure.Part;
import tripline.measure.Shape;
import tripline.measure.Sharing;

/** Pools repeated figures of one quantity. */
public final class Pool {
  private Pool() {}

  /**
   * Mean of repeats that scatter by more than their own uncertainty explains: the scatter of the
   * mean is added as a part of its own ({@link PartNames#REPEAT}).
   *
   * @param figures at least one
   */
  public static Estimate repeated(List<Estimate> figures) {
    Estimate mean = Estimate.mean(figures);
    int n = figures.size();
    if (n < 2) {
      return mean;
    }
    double squares = 0;
    double own = 0;
    for (Estimate figure : figures) {
      squares += Math.pow(figure.value() - mean.value(), 2);
      own += Math.pow(figure.ownU(), 2);
    }
    double beyond = squares / (n - 1) - own / n;
    return beyond > 0
        ? mean.with(Part.own(PartNames.REPEAT, Math.sqrt(beyond / n), Shape.NORMAL))
        : mean;
  }

  /**
   * A figure that enters many others as one and the same error: its own parts become one common
   * part of the given name.
   */
  public static Estimate shared(Estimate figure, String name) {
    List<Part> parts = new ArrayList<>();
    for (Part part : figure.parts()) {
      if (part.sharing() == Sharing.COMMON) {
        parts.add(part);
      }
    }
    parts.add(Part.common(name, figure.ownU(), Shape.NORMAL));
    return new Estimate(figure.value(), parts);
  }
}
