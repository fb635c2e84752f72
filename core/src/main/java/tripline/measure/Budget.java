package tripline.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Brings the parts of an estimate into one canonical form, so that equal budgets are equal lists
 * whatever order they were added in.
 *
 * <p>Common parts of one name add with their sign. Normal own parts of one name add in quadrature.
 * Rectangular own parts of one name stay apart, because their sum is not rectangular and its 95 %
 * interval depends on how many there are; beyond {@link #MOST_RECTANGLES} the smallest join the
 * normal part of their name, which by then they resemble. Parts of zero vanish.
 */
final class Budget {
  static final int MOST_RECTANGLES = 6;

  private static final Comparator<Part> ORDER =
      Comparator.comparing(Part::name)
          .thenComparing(Part::sharing)
          .thenComparing(Part::shape)
          .thenComparing(Comparator.comparingDouble(Part::u).reversed());

  private Budget() {}

  static List<Part> canonical(List<Part> parts) {
    Map<String, Part> common = new TreeMap<>();
    Map<String, Double> normalVariances = new TreeMap<>();
    Map<String, List<Part>> rectangles = new TreeMap<>();
    for (Part part : parts) {
      if (part.sharing() == Sharing.COMMON) {
        common.merge(part.name(), part, Budget::addCommon);
      } else if (part.shape() == Shape.NORMAL) {
        normalVariances.merge(part.name(), part.variance(), Double::sum);
      } else if (part.u() > 0) {
        rectangles.computeIfAbsent(part.name(), name -> new ArrayList<>()).add(part);
      }
    }
    List<Part> result = new ArrayList<>(common.values());
    for (List<Part> sameName : rectangles.values()) {
      sameName.sort(ORDER);
      int kept = Math.min(sameName.size(), MOST_RECTANGLES);
      result.addAll(sameName.subList(0, kept));
      for (Part small : sameName.subList(kept, sameName.size())) {
        normalVariances.merge(small.name(), small.variance(), Double::sum);
      }
    }
    normalVariances.forEach(
        (name, variance) -> result.add(Part.own(name, Math.sqrt(variance), Shape.NORMAL)));
    result.removeIf(part -> part.u() == 0);
    result.sort(ORDER);
    return List.copyOf(result);
  }

  private static Part addCommon(Part a, Part b) {
    if (a.shape() != b.shape()) {
      throw new IllegalArgumentException(
          "common part "
              + a.name()
              + " is "
              + a.shape()
              + " in one figure, "
              + b.shape()
              + " in another: one source has one law");
    }
    return new Part(a.name(), a.u() + b.u(), a.shape(), Sharing.COMMON);
  }
}
