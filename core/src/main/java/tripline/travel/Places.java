package tripline.travel;

import java.util.ArrayList;
import java.util.List;
import tripline.measure.Estimate;

/** Groups positions at which a contact changed into places. */
public final class Places {
  /** Changes further apart than this are not the same trip point, turns. */
  private static final double APART_TURNS = 0.5;

  private Places() {}

  /**
   * Groups of figures with a gap of more than half a turn between them, the most populous first,
   * among equals the lowest first.
   */
  public static List<List<Estimate>> of(List<Estimate> turns) {
    List<Estimate> sorted =
        turns.stream().sorted((a, b) -> Double.compare(a.value(), b.value())).toList();
    List<List<Estimate>> groups = new ArrayList<>();
    double last = Double.NEGATIVE_INFINITY;
    for (Estimate estimate : sorted) {
      if (estimate.value() - last > APART_TURNS) {
        groups.add(new ArrayList<>());
      }
      groups.get(groups.size() - 1).add(estimate);
      last = estimate.value();
    }
    groups.sort((a, b) -> Integer.compare(b.size(), a.size()));
    return groups;
  }
}
