package tripline.assess;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Lays the sheet's trip points over what was seen where no hard stop ties the two: by the median
 * distance from each contact's changes to its own trip point. Good enough to recognise a trip point
 * by; nothing is judged with it.
 */
final class Registration {
  private static final int FEWEST = 2;

  private Registration() {}

  /** Targets with their nominal places moved, or as they are where a stop is known. */
  static List<TripTarget> align(
      List<TripTarget> targets, List<ChartLine> lines, List<Observed> observed) {
    if (targets.stream().anyMatch(t -> t.x().isPresent())) {
      return targets;
    }
    List<Double> offsets = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      ChartLine line = lines.get(i);
      observed
          .get(i)
          .crossings()
          .forEach(
              c ->
                  line.edges().stream()
                      .filter(e -> line.closedAbove(e.edge()) == c.closedAbove())
                      .map(TripTarget::nominalX)
                      .filter(OptionalDouble::isPresent)
                      .forEach(x -> offsets.add(c.x().value() - x.getAsDouble())));
    }
    if (offsets.size() < FEWEST) {
      return targets;
    }
    Collections.sort(offsets);
    double offset = offsets.get(offsets.size() / 2);
    return targets.stream().map(t -> t.shifted(offset)).toList();
  }
}
