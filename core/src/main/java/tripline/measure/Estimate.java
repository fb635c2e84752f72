package tripline.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Predicate;

/**
 * A figure and the parts of its combined standard uncertainty (JCGM 100:2008 clause 5).
 *
 * <p>Arithmetic carries the parts along: own parts are independent of everything, so they add in
 * quadrature (even {@code a.minus(a)} does, being read as two readings that happen to agree);
 * common parts of one name are one and the same error, so they add with their sign and cancel in
 * differences.
 *
 * @param value best estimate, finite, in the caller's unit
 * @param parts the budget in canonical order (by name); never holds a part of zero. Own rectangular
 *     parts of one name may occur several times: {@link #budget} sums up by name for the reader.
 */
public record Estimate(double value, List<Part> parts) {

  /** Name of the part that {@link #of(double, double)} gives a figure whose budget is not known. */
  public static final String UNNAMED = "given";

  /**
   * @throws IllegalArgumentException if the value is not finite or common parts of one name differ
   *     in shape
   */
  public Estimate {
    Finite.require(value, "value");
    parts = Budget.canonical(parts);
  }

  /** A figure without uncertainty. */
  public static Estimate exact(double value) {
    return new Estimate(value, List.of());
  }

  /** A figure of which only its (normal, own) standard uncertainty is known. */
  public static Estimate of(double value, double u) {
    return of(value, Part.own(UNNAMED, u, Shape.NORMAL));
  }

  /** A figure with its parts. */
  public static Estimate of(double value, Part... parts) {
    return new Estimate(value, Arrays.asList(parts));
  }

  /** The same value with one part more. */
  public Estimate with(Part part) {
    return join(value, part.u() == 0 ? List.of() : List.of(part));
  }

  /** Combined standard uncertainty, k = 1 (JCGM 100 5.1.2), in the unit of the value. */
  public double u() {
    return rss(part -> true);
  }

  /** The share of {@link #u} that averages out over figures. */
  public double ownU() {
    return rss(part -> part.sharing() == Sharing.OWN);
  }

  /** The share of {@link #u} that figures of the same source have in common. */
  public double commonU() {
    return rss(part -> part.sharing() == Sharing.COMMON);
  }

  /** The same value with its common parts alone: what no number of repeats reduces. */
  public Estimate commonOnly() {
    return new Estimate(value, parts.stream().filter(p -> p.sharing() == Sharing.COMMON).toList());
  }

  /**
   * Half-width of the interval that holds 95 % of the combined law: 1.96 u if normal, 1.645 u if
   * one rectangle dominates, what lies between by {@link Coverage}. Parts are taken as known: no
   * degrees of freedom.
   */
  public double expanded95() {
    return coverage().halfWidth(0.95);
  }

  /** The law of the error: convolution of the rectangular parts with the normal rest. */
  public Coverage coverage() {
    double[] rectangles =
        parts.stream().filter(p -> p.shape() == Shape.RECTANGULAR).mapToDouble(Part::u).toArray();
    return Coverage.of(rss(part -> part.shape() == Shape.NORMAL), rectangles);
  }

  /** Standard uncertainty by part name, each at least 0; squares add up to {@code u()} squared. */
  public SortedMap<String, Double> budget() {
    SortedMap<String, Double> byName = new TreeMap<>();
    parts.forEach(part -> byName.merge(part.name(), Math.abs(part.u()), Math::hypot));
    return Collections.unmodifiableSortedMap(byName);
  }

  /** Covariance with another figure: what their common parts share (JCGM 100 5.2.2). */
  public double covariance(Estimate other) {
    double sum = 0;
    for (Part a : parts) {
      for (Part b : other.parts) {
        if (a.sharing() == Sharing.COMMON
            && b.sharing() == Sharing.COMMON
            && a.name().equals(b.name())) {
          sum += a.u() * b.u();
        }
      }
    }
    return sum;
  }

  /** Shifted by an exact amount. */
  public Estimate plus(double shift) {
    return new Estimate(value + shift, parts);
  }

  /** Sum of two figures. */
  public Estimate plus(Estimate other) {
    return join(value + other.value, other.parts);
  }

  /** Difference of two figures: common parts cancel as far as they are equal. */
  public Estimate minus(Estimate other) {
    return plus(other.negate());
  }

  /** Multiplied by an exact factor. */
  public Estimate times(double factor) {
    return new Estimate(value * factor, parts.stream().map(p -> p.times(factor)).toList());
  }

  /** The figure with its sign changed, and with it that of its common parts. */
  public Estimate negate() {
    return times(-1);
  }

  /**
   * The same figure with those common parts made its own: what was one error while it came from one
   * session (a stop touched once) is independent of that of another session.
   */
  public Estimate unshare(Predicate<String> name) {
    return new Estimate(
        value,
        parts.stream()
            .map(
                p ->
                    p.sharing() == Sharing.COMMON && name.test(p.name())
                        ? Part.own(p.name(), Math.abs(p.u()), p.shape())
                        : p)
            .toList());
  }

  /**
   * Arithmetic mean: own parts shrink with the root of the count, common parts stay.
   *
   * @throws IllegalArgumentException if there are none
   */
  public static Estimate mean(List<Estimate> figures) {
    double[] equal = new double[figures.size()];
    Arrays.fill(equal, 1);
    return combine(figures, equal);
  }

  /**
   * Mean weighted by the inverse variance of the own parts (common parts give no reason to prefer
   * one figure over another). Figures without own uncertainty, if any, are averaged alone.
   *
   * @throws IllegalArgumentException if there are none
   */
  public static Estimate weightedMean(List<Estimate> figures) {
    double[] own = figures.stream().mapToDouble(Estimate::ownU).toArray();
    double least = Arrays.stream(own).min().orElse(0);
    double[] weights = new double[own.length];
    for (int i = 0; i < own.length; i++) {
      double ratio = own[i] == least ? 1 : least / own[i];
      weights[i] = ratio * ratio;
    }
    return combine(figures, weights);
  }

  private static Estimate combine(List<Estimate> figures, double[] weights) {
    Finite.requireAtLeast(1, figures.size(), "figures to average");
    double total = Arrays.stream(weights).sum();
    double[] values = new double[weights.length];
    List<Part> all = new ArrayList<>();
    for (int i = 0; i < weights.length; i++) {
      Estimate share = figures.get(i).times(weights[i] / total);
      values[i] = share.value;
      all.addAll(share.parts);
    }
    return new Estimate(Sum.of(values), all);
  }

  private Estimate join(double newValue, List<Part> more) {
    List<Part> all = new ArrayList<>(parts);
    all.addAll(more);
    return new Estimate(newValue, all);
  }

  private double rss(Predicate<Part> which) {
    double sum = 0;
    for (Part part : parts) {
      sum += which.test(part) ? part.variance() : 0;
    }
    return Math.sqrt(sum);
  }
}
