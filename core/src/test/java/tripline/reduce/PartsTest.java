package tripline.reduce;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import tripline.truth.Rng;

/** Small parts of the reduction, one by one. */
class PartsTest {
  @Test
  void rhythmOfEvenStamps() {
    Rhythm rhythm = new Rhythm();
    for (int k = 0; k < 1000; k++) {
      rhythm.add(1_000_000);
    }
    rhythm.add(0);
    assertThat(rhythm.total()).isEqualTo(1000);
    assertThat(rhythm.medianNs()).isEqualTo(1_000_000);
    assertThat(rhythm.scanNs()).isEqualTo(1_000_000);
    assertThat(rhythm.regular()).isTrue();
  }

  @Test
  void rhythmOfUnevenStamps() {
    Rhythm rhythm = new Rhythm();
    assertThat(rhythm.medianNs()).isZero();
    Rng rng = new Rng(1);
    for (int k = 0; k < 1000; k++) {
      rhythm.add(10_000_000L * (1 + rng.below(10)));
    }
    assertThat(rhythm.regular()).isFalse();
    assertThat(rhythm.quantileNs(0.05)).isEqualTo(10_000_000);
    // A bin is a quarter of an octave wide.
    assertThat((double) rhythm.medianNs()).isBetween(40e6, 60e6);
    rhythm.add(1);
    rhythm.add(Long.MAX_VALUE);
    assertThat(rhythm.quantileNs(1)).isEqualTo(Long.MAX_VALUE);
  }

  @Test
  void unwrapsBothWaysAndKeepsFarJumps() {
    Unwrapper up = new Unwrapper(100);
    assertThat(
            new double[] {up.unwrap(90), up.unwrap(99), up.unwrap(3), up.unwrap(95), up.unwrap(50)})
        .containsExactly(90, 99, 103, 95, 50);
    Unwrapper round = new Unwrapper(360);
    double last = 0;
    for (int k = 0; k < 10_000; k++) {
      last = round.unwrap(k * 7.0 % 360);
    }
    assertThat(last).isEqualTo(9999 * 7.0);
    assertThat(new Unwrapper(Double.NaN).unwrap(1e12)).isEqualTo(1e12);
  }

  @Test
  void noiseOfALineAndItsCount() {
    Rng rng = new Rng(2);
    NoiseGauge gauge = new NoiseGauge(0);
    assertThat(gauge.noise()).isZero();
    assertThat(gauge.quantum()).isZero();
    for (int k = 0; k < 40_000; k++) {
      gauge.onReading(k * 1_000_000L, Feed.counts(0.7e-3 * k + 0.01 * rng.gaussian(), 0.0005));
    }
    // 10,000 triples: 1.3 %
    assertThat(gauge.noise()).isCloseTo(0.01, within(0.0004));
    assertThat(gauge.quantum()).isCloseTo(0.0005, within(1e-9));
    assertThat(new NoiseGauge(0.25).quantum()).isEqualTo(0.25);
  }

  /** Uneven spacing: the middle of three counts by where it lies. */
  @Test
  void noiseOfUnevenStamps() {
    Rng rng = new Rng(3);
    NoiseGauge gauge = new NoiseGauge(0.001);
    long now = 0;
    for (int k = 0; k < 40_000; k++) {
      now += 100_000 + rng.below(2_000_000);
      gauge.onReading(now, 1e-9 * now + 0.01 * rng.gaussian());
    }
    assertThat(gauge.noise()).isCloseTo(0.01, within(0.0004));
  }

  @Test
  void outlineStaysBoundedAndKeepsBothEnds() {
    OutlineThinner thinner = new OutlineThinner();
    assertThat(thinner.outline(0, Double.NaN).points()).isEmpty();
    for (int k = 0; k <= 1_000_000; k++) {
      thinner.onReading(k * 1_000_000L, k);
    }
    List<Outline.Point> points = thinner.outline(1_000_000_000_000L, 1_000_000).points();
    assertThat(points.size()).isBetween(OutlineThinner.MOST / 2, OutlineThinner.MOST + 1);
    assertThat(points.get(0)).isEqualTo(new Outline.Point(0, 0));
    assertThat(points.get(points.size() - 1))
        .isEqualTo(new Outline.Point(1_000_000_000_000L, 1_000_000));
    for (Outline.Point p : points) {
      assertThat(p.reading()).isEqualTo(p.timeNs() / 1e6);
    }
    for (int i = 2; i < points.size() - 1; i++) {
      long step = points.get(i).timeNs() - points.get(i - 1).timeNs();
      assertThat(step).isBetween(1L, 2 * (points.get(1).timeNs() - points.get(0).timeNs()));
    }
  }

  @Test
  void speedsLeaveOutRunUpAndRunDown() {
    Speeds speeds = new Speeds();
    speeds.begin(0, 0);
    double reading = 0;
    for (int k = 1; k <= 60; k++) {
      double speed = k <= 8 || k > 48 ? 0.1 : 0.5;
      reading += speed * 0.05;
      speeds.onBlock(50_000_000L * k, reading);
    }
    assertThat(speeds.run().unitsPerS()).isCloseTo(0.5, within(1e-9));
    assertThat(speeds.run().ripple()).isLessThan(1e-9);
  }

  @Test
  void aShortMoveHasNoSteadyPart() {
    Speeds speeds = new Speeds();
    speeds.begin(0, 1);
    speeds.onBlock(500_000_000, 0.8);
    Movement.Speed run = speeds.run();
    assertThat(run.unitsPerS()).isCloseTo(-0.4, within(1e-12));
    assertThat(run.u()).isCloseTo(0.2, within(1e-12));
  }

  @Test
  void atRestMeansWellInsideARest() {
    Movement.Rest open = new Movement.Rest(0, 1000, 0, 0, 0, 0, Movement.Grain.NOISE);
    Movement.Move move =
        new Movement.Move(1000, 2000, 0, 1, 1, new Movement.Speed(1, 0, 0), Stopping.NONE);
    Movement.Rest close = new Movement.Rest(2000, 3000, 0, 0, 0, 0, Movement.Grain.NOISE);
    Stillness stillness = new Stillness(List.of(open, move, close), 100);
    assertThat(stillness.at(0)).isEqualTo(Change.Motion.AT_REST);
    assertThat(stillness.at(900)).isEqualTo(Change.Motion.AT_REST);
    assertThat(stillness.at(901)).isEqualTo(Change.Motion.MOVING);
    assertThat(stillness.at(1500)).isEqualTo(Change.Motion.MOVING);
    assertThat(stillness.at(2099)).isEqualTo(Change.Motion.MOVING);
    assertThat(stillness.at(2100)).isEqualTo(Change.Motion.AT_REST);
    assertThat(stillness.at(3000)).isEqualTo(Change.Motion.AT_REST);
    assertThat(stillness.at(3001)).isEqualTo(Change.Motion.MOVING);
    assertThat(new Stillness(List.of(), 100).at(5)).isEqualTo(Change.Motion.MOVING);
  }

  @Test
  void ringKeepsRunsOfEqualReadingsAndForgetsTheOldest() {
    ReadingRing ring = new ReadingRing();
    assertThat(ring.firstEndingAtOrAfter(0)).isEqualTo(ring.end());
    ring.add(10, 1);
    ring.repeat(20);
    ring.hold(29, 9);
    ring.add(30, 2);
    assertThat(ring.end()).isEqualTo(2);
    assertThat(ring.from(0)).isEqualTo(10);
    assertThat(ring.to(0)).isEqualTo(29);
    assertThat(ring.count(0)).isEqualTo(11);
    assertThat(ring.firstEndingAtOrAfter(29)).isZero();
    assertThat(ring.firstEndingAtOrAfter(30)).isEqualTo(1);
    for (int k = 0; k < ReadingRing.CAPACITY; k++) {
      ring.add(40 + k, k % 2 == 0 ? 3 : 4);
    }
    assertThat(ring.oldest()).isEqualTo(2);
    assertThat(ring.firstEndingAtOrAfter(0)).isEqualTo(2);
    assertThat(ring.value(2)).isEqualTo(3);
  }
}
