package tripline.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Laws of the algebra; published figures stand in {@link CoverageTest} and {@link TypeBTest}. */
class EstimateTest {

  private static Estimate change(
      double x, double fit, double bracket, double scaleU, double stopU) {
    return Estimate.of(
        x,
        Part.own("fit", fit, Shape.NORMAL),
        Part.own("bracket", bracket, Shape.RECTANGULAR),
        Part.common("scale", x * scaleU, Shape.NORMAL),
        Part.common("stop:closed", -stopU, Shape.NORMAL));
  }

  @Test
  void whatNoRepeatReducesIsTheCommonPartAlone() {
    Estimate shared = change(10, 0.003, 0.002, 1e-3, 0.01).commonOnly();
    assertThat(shared.value()).isEqualTo(10);
    assertThat(shared.ownU()).isZero();
    assertThat(shared.u()).isCloseTo(Math.hypot(0.01, 0.01), within(1e-15));
    assertThat(shared.budget()).containsOnlyKeys("scale", "stop:closed");
  }

  @Test
  void partsOfZeroVanish() {
    Part none = Part.common("none", 0, Shape.NORMAL);
    assertThat(Estimate.of(1, none)).isEqualTo(Estimate.exact(1));
    assertThat(Estimate.of(1, Part.own("a", 2, Shape.NORMAL), none))
        .isEqualTo(Estimate.of(1, Part.own("a", 2, Shape.NORMAL)));
    assertThat(Estimate.of(1, Part.own("a", 2, Shape.NORMAL)).times(0))
        .isEqualTo(Estimate.exact(0));
  }

  @Test
  void partsAddInQuadrature() {
    assertThat(change(10, 0.003, 0.004, 0.0012, 0.084).u()).isCloseTo(0.085, within(1e-15));
    assertThat(Estimate.exact(3).u()).isZero();
    assertThat(Estimate.exact(3).expanded95()).isZero();
    assertThat(Estimate.of(3, 0.2).u()).isEqualTo(0.2);
  }

  @Test
  void commonPartsCancelInADifferenceAndOwnPartsDoNot() {
    Estimate a = change(10, 0.003, 0.004, 0.001, 0.02);
    Estimate difference = a.minus(a);
    assertThat(difference.value()).isZero();
    assertThat(difference.commonU()).isZero();
    assertThat(difference.u()).isCloseTo(0.005 * Math.sqrt(2), within(1e-15));
    assertThat(difference.parts()).noneMatch(part -> part.sharing() == Sharing.COMMON);
  }

  @Test
  void aScaleErrorIsProportionalToTheDistanceBetweenTwoChanges() {
    Estimate a = change(30, 0, 0, 0.001, 0.02);
    Estimate b = change(10, 0, 0, 0.001, 0.02);
    assertThat(a.minus(b).u()).isCloseTo(20 * 0.001, within(1e-15));
    assertThat(a.plus(b).budget().get("stop:closed")).isCloseTo(0.04, within(1e-15));
    assertThat(a.covariance(b)).isCloseTo(30 * 10 * 1e-6 + 0.02 * 0.02, within(1e-15));
  }

  @Test
  void differentStopsAreIndependent() {
    Estimate a = Estimate.exact(1).with(Part.common("stop:closed", 0.03, Shape.NORMAL));
    Estimate b = Estimate.exact(1).with(Part.common("stop:open", 0.04, Shape.NORMAL));
    assertThat(a.minus(b).u()).isCloseTo(0.05, within(1e-15));
  }

  @Test
  void theMeanShrinksOwnPartsOnly() {
    Estimate a = change(10, 0.004, 0, 0.001, 0.02);
    Estimate mean = Estimate.mean(Collections.nCopies(4, a));
    assertThat(mean.value()).isCloseTo(10, within(1e-14));
    assertThat(mean.ownU()).isCloseTo(0.002, within(1e-15));
    assertThat(mean.commonU()).isCloseTo(a.commonU(), within(1e-15));
  }

  @Test
  void fourBracketsMakeAnIrwinHallLaw() {
    Estimate stroke = Estimate.of(1, Part.own("bracket", 1, Shape.RECTANGULAR));
    Estimate mean = Estimate.mean(Collections.nCopies(4, stroke));
    assertThat(mean.u()).isCloseTo(0.5, within(1e-15));
    assertThat(mean.expanded95()).isCloseTo(0.5 * 1.939703, within(1e-6));
    assertThat(mean.budget()).containsOnlyKeys("bracket");
  }

  @Test
  void manyBracketsStayBoundedAndLoseNoVariance() {
    Estimate stroke = Estimate.of(1, Part.own("bracket", 0.1, Shape.RECTANGULAR));
    Estimate mean = Estimate.mean(Collections.nCopies(100, stroke));
    assertThat(mean.u()).isCloseTo(0.01, within(1e-14));
    assertThat(mean.parts()).hasSize(Budget.MOST_RECTANGLES + 1);
    assertThat(mean.expanded95() / mean.u()).isCloseTo(1.959964, within(0.002));
  }

  @Test
  void theWeightedMeanPrefersTheBetterFigure() {
    Estimate good = change(1.0, 0.001, 0, 0, 0.02);
    Estimate poor = change(2.0, 0.003, 0, 0, 0.02);
    Estimate mean = Estimate.weightedMean(List.of(good, poor));
    assertThat(mean.value()).isCloseTo(1.1, within(1e-14));
    assertThat(mean.ownU()).isCloseTo(1 / Math.sqrt(1e6 + 1e6 / 9), within(1e-15));
    assertThat(mean.commonU()).isCloseTo(0.02, within(1e-15));
    assertThat(Estimate.weightedMean(List.of(poor, Estimate.exact(5))).value()).isEqualTo(5);
    assertThat(Estimate.weightedMean(List.of(Estimate.exact(4), Estimate.exact(5))).value())
        .isEqualTo(4.5);
  }

  @Test
  void whatWasSharedWithinASessionCanBeMadeIndependentOfAnother() {
    Estimate a = change(10, 0, 0, 0.001, 0.02);
    Estimate before = a.unshare(name -> name.startsWith("stop:"));
    Estimate after = a.unshare(name -> name.startsWith("stop:"));
    assertThat(before.u()).isEqualTo(a.u());
    assertThat(after.minus(before).u()).isCloseTo(0.02 * Math.sqrt(2), within(1e-15));
  }

  @Test
  void anySequenceOfAdditionsGivesTheSameFigure() {
    Random random = new Random(7);
    for (int round = 0; round < 50; round++) {
      List<Estimate> figures = new ArrayList<>();
      for (int i = 0; i < 5; i++) {
        figures.add(
            change(
                random.nextInt(64) / 8.0,
                random.nextDouble(),
                random.nextDouble(),
                random.nextDouble() - 0.5,
                random.nextDouble()));
      }
      Estimate forth = figures.stream().reduce(Estimate.exact(0), Estimate::plus);
      Collections.shuffle(figures, random);
      Estimate back = figures.stream().reduce(Estimate.exact(0), Estimate::plus);
      assertThat(back.value()).isEqualTo(forth.value());
      assertThat(back.u()).isCloseTo(forth.u(), within(1e-12));
      assertThat(back.expanded95()).isCloseTo(forth.expanded95(), within(1e-9));
      assertThat(back.parts()).hasSameSizeAs(forth.parts());
    }
  }

  @Test
  void scalingScalesEverythingAndNegationKeepsSizes() {
    Estimate a = change(10, 0.003, 0.004, 0.001, 0.02);
    assertThat(a.times(-2).u()).isCloseTo(2 * a.u(), within(1e-15));
    assertThat(a.times(-2).expanded95()).isCloseTo(2 * a.expanded95(), within(1e-12));
    assertThat(a.negate().plus(a).commonU()).isZero();
    assertThat(a.plus(5).parts()).isEqualTo(a.parts());
    assertThat(a.negate().negate()).isEqualTo(a);
  }

  /** The algebra against a simulation of the errors it describes. */
  @Test
  void simulatedBackoffsScatterAsTheAlgebraSays() {
    Random random = new Random(11);
    int n = 100_000;
    double[] errors =
        IntStream.range(0, n)
            .mapToDouble(
                i -> {
                  double scale = 0.002 * random.nextGaussian();
                  double stop = 0.01 * random.nextGaussian();
                  double sum = 0;
                  for (int stroke = 0; stroke < 3; stroke++) {
                    sum += 0.02 * random.nextGaussian();
                    sum += 0.03 * Math.sqrt(3) * (2 * random.nextDouble() - 1);
                  }
                  return sum / 3 + 5 * scale - stop;
                })
            .toArray();
    Estimate mean = Estimate.mean(Collections.nCopies(3, change(5, 0.02, 0.03, 0.002, 0.01)));
    assertThat(Moments.of(errors).sd()).isCloseTo(mean.u(), within(0.005 * mean.u()));
  }

  @Test
  void programmingErrorsAreToldAtOnce() {
    assertThatThrownBy(() -> Estimate.exact(Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Part.own("fit", -1, Shape.NORMAL)).hasMessageContaining("fit");
    assertThatThrownBy(() -> Part.common("scale", Double.NaN, Shape.NORMAL))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Estimate.mean(List.of())).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Estimate.weightedMean(List.of()))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(
            () ->
                Estimate.of(
                    1,
                    Part.common("stop", 1, Shape.NORMAL),
                    Part.common("stop", 1, Shape.RECTANGULAR)))
        .hasMessageContaining("one source has one law");
  }
}
