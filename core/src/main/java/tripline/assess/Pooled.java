package tripline.assess;

import java.util.List;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import tripline.measure.Estimate;
import tripline.measure.Moments;
import tripline.measure.Part;
import tripline.measure.Shape;
import tripline.measure.Student;

/**
 * One figure measured over several strokes. Own parts average, common parts do not; where the
 * strokes scatter more than their own parts explain, the scatter counts instead.
 *
 * @param mean the pooled figure
 * @param strokes how many figures went in, &gt;= 1
 * @param range largest minus smallest, turns
 * @param sd standard deviation over the strokes, turns; 0 for one stroke
 * @param scattered the scatter exceeds what the stated uncertainties explain (chi-squared, 5 %)
 */
public record Pooled(Estimate mean, int strokes, double range, double sd, boolean scattered) {
  /** Name of the part that scatter between strokes adds. */
  public static final String SCATTER = "scatter";

  private static final double SIGNIFICANCE = 0.05;

  /** One-sided 95 %: the guard band that decisions are taken with. */
  private static final double NORMAL_95 = 1.645;

  /**
   * Pools figures of one quantity.
   *
   * @param figures at least one
   */
  public static Pooled of(List<Estimate> figures) {
    if (figures.size() == 1) {
      return new Pooled(figures.get(0), 1, 0, 0, false);
    }
    Moments moments = Moments.of(figures.stream().mapToDouble(Estimate::value).toArray());
    Estimate weighted = Estimate.weightedMean(figures);
    double chiSquared = chiSquared(figures, weighted.value());
    int freedom = figures.size() - 1;
    boolean scattered =
        ChiSquaredDistribution.of(freedom).survivalProbability(chiSquared) < SIGNIFICANCE;
    Estimate mean = scattered ? widened(figures, moments, freedom) : weighted;
    return new Pooled(mean, figures.size(), moments.range(), moments.sd(), scattered);
  }

  /**
   * Equal weights, and s / sqrt(n) times Student's factor in place of the normal one (JCGM 100
   * 4.2.3, G.3): a standard deviation from two or three strokes is itself poorly known.
   */
  private static Estimate widened(List<Estimate> figures, Moments moments, int freedom) {
    Estimate mean = Estimate.mean(figures);
    double student = Student.quantile(0.95, freedom) / NORMAL_95;
    double scatter = moments.sdOfMean() * student;
    double own = mean.ownU();
    return scatter <= own
        ? mean
        : mean.with(Part.own(SCATTER, Math.sqrt(scatter * scatter - own * own), Shape.NORMAL));
  }

  private static double chiSquared(List<Estimate> figures, double mean) {
    double sum = 0;
    for (Estimate figure : figures) {
      double residual = figure.value() - mean;
      if (residual != 0) {
        double own = figure.ownU();
        sum += own > 0 ? residual * residual / (own * own) : Double.MAX_VALUE / figures.size();
      }
    }
    return Math.min(sum, Double.MAX_VALUE);
  }
}
