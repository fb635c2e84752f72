package tripline.compare;

import java.util.ArrayList;
import java.util.List;
import tripline.measure.Estimate;
import tripline.measure.Part;
import tripline.measure.Shape;
import tripline.result.Result.Measured;
import tripline.result.Result.PartResult;
import tripline.travel.PartNames;

/**
 * Figures of two results as estimates that know which of their errors are the same.
 *
 * <p>A result states its parts without their sign. That is no loss here: only figures of one kind
 * are subtracted (the same contact, the same direction of travel), and in these every common error
 * works with the same sign.
 */
final class Budgets {
  private static final String RECTANGULAR = "rectangular";

  /** Digits of a result file. */
  private static final double ROUNDING = 1e-3;

  private final Kinship kinship;

  Budgets(Kinship kinship) {
    this.kinship = kinship;
  }

  Estimate before(Measured figure) {
    return estimate(figure, "before ");
  }

  Estimate after(Measured figure) {
    return estimate(figure, "after ");
  }

  /** The same without a part that is an error of what was taken off, not of what was seen. */
  Estimate beforeBut(Measured figure, String part) {
    return estimate(without(figure, part), "before ", Shape.NORMAL);
  }

  /** The same of the later result. */
  Estimate afterBut(Measured figure, String part) {
    return estimate(without(figure, part), "after ", Shape.NORMAL);
  }

  private static Measured without(Measured figure, String part) {
    return new Measured(
        figure.value(),
        figure.u(),
        figure.u95(),
        figure.parts().stream().filter(p -> !p.name().equals(part)).toList());
  }

  /**
   * A rectangular part may be the sum of several by that name, which is no rectangle: it is taken
   * as one only where that gives the stated 95 % interval again.
   */
  private Estimate estimate(Measured figure, String side) {
    Estimate sharp = estimate(figure, side, Shape.RECTANGULAR);
    return sharp.expanded95() < figure.u95() * (1 - ROUNDING)
        ? estimate(figure, side, Shape.NORMAL)
        : sharp;
  }

  private Estimate estimate(Measured figure, String side, Shape rectangular) {
    List<Part> parts = new ArrayList<>();
    for (PartResult part : figure.parts()) {
      Shape shape = part.shape().equals(RECTANGULAR) ? rectangular : Shape.NORMAL;
      parts.add(part(part, side, shape));
    }
    if (parts.isEmpty()) {
      parts.add(part(new PartResult(Estimate.UNNAMED, figure.u(), "normal"), side, Shape.NORMAL));
    }
    return new Estimate(figure.value(), parts);
  }

  private Part part(PartResult part, String side, Shape shape) {
    if (kinship.shares(part.name())) {
      return Part.common(part.name(), part.u(), Shape.NORMAL);
    }
    return PartNames.isShared(part.name())
        ? Part.common(side + part.name(), part.u(), Shape.NORMAL)
        : Part.own(part.name(), part.u(), shape);
  }
}
