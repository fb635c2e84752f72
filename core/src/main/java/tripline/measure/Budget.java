package tripline.measure;

import java.util.ArrayList;
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

  private Budget() {}

  static List<Part> canonical(List<Part> parts) {
    if (isCanonical(parts)) {
      return List.copyOf(parts);
    }
    Map<String, Part> common = new TreeMap<>();
    Map<String, Double> normalVariances = new TreeMap<>();
    Map<String, List<Part>> rectangles = new TreeMap<>();
    for (Part part : parts) {
      if (part.sharing() == Sharing.COMMON) {
        common.merge(part.name(), part, Budget::addCommon);
      } else if (part.shape() == Shape.NORMAL) {
        addNormal(normalVariances, part);
      } else if (part.u() > 0) {
        rectangles.computeIfAbsent(part.name(), name -> new ArrayList<>()).add(part);
      }
    }
    List<Part> result = new ArrayList<>(common.values());
    for (List<Part> sameName : rectangles.values()) {
      sameName.sort(Budget::inOrder);
      int kept = Math.min(sameName.size(), MOST_RECTANGLES);
      result.addAll(sameName.subList(0, kept));
      for (Part small : sameName.subList(kept, sameName.size())) {
        addNormal(normalVariances, small);
      }
    }
    normalVariances.forEach(
        (name, variance) -> result.add(Part.own(name, Math.sqrt(variance), Shape.NORMAL)));
    result.removeIf(part -> part.u() == 0);
    result.sort(Budget::inOrder);
    return List.copyOf(result);
  }

  /**
   * Of one part a name, in order: what arithmetic with exact numbers leaves of a canonical list.
   */
  private static boolean isCanonical(List<Part> parts) {
    String before = null;
    for (Part part : parts) {
      if (part.u() == 0 || (before != null && before.compareTo(part.name()) >= 0)) {
        return false;
      }
      before = part.name();
    }
    return true;
  }

  /** By name, then by law, the larger first. */
  private static int inOrder(Part a, Part b) {
    int order = a.name().compareTo(b.name());
    if (order == 0) {
      order = a.sharing().compareTo(b.sharing());
    }
    if (order == 0) {
      order = a.shape().compareTo(b.shape());
    }
    return order != 0 ? order : Double.compare(b.u(), a.u());
  }

  private static void addNormal(Map<String, Double> variances, Part part) {
    variances.put(part.name(), variances.getOrDefault(part.name(), 0.0) + part.variance());
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
