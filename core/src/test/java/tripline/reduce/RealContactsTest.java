package tripline.reduce;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tripline.reduce.Feed.NONE;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tripline.measure.Moments;
import tripline.truth.Rng;

/**
 * Five real limit contacts against a real encoder. Source: public acceptance-test logs of a motion
 * system at a research facility, repository {@code ecmc_bifrost_vac_tank_sat}, {@code
 * tests/before_coll/system_zero_1/switchtest}: counts of the sample before each contact line and of
 * the sample that carries its stamp (the true change lies between them), as published in {@code
 * data_summary.log} and the logs beside it. About each change a recording is made here in the
 * manner of that logger: 10 ms scan, 12 counts a scan, a row only where something changed, contact
 * and position rows of one stamp.
 */
class RealContactsTest {
  private record Crossings(
      String name,
      List<Integer> before,
      List<Integer> at,
      double mean,
      double s,
      double differential) {
    @Override
    public String toString() {
      return name;
    }
  }

  private static Crossings of(String name, double mean, double s, double diff, Integer... counts) {
    List<Integer> all = List.of(counts);
    return new Crossings(name, all.subList(0, 5), all.subList(5, 10), mean, s, diff);
  }

  /** Mean and s (n - 1) of the interval midpoints; magnitude of the differential travel. */
  static Stream<Crossings[]> switches() {
    return Stream.of(
        new Crossings[] {
          of(
              "low kill engage",
              793796.3,
              6.271,
              734.8,
              793792,
              793783,
              793787,
              793799,
              793788,
              793807,
              793796,
              793799,
              793812,
              793800),
          of(
              "low kill disengage",
              793061.5,
              2.500,
              734.8,
              793064,
              793068,
              793068,
              793067,
              793071,
              793052,
              793055,
              793056,
              793055,
              793059)
        },
        new Crossings[] {
          of(
              "low limit engage",
              786493.9,
              7.145,
              630.2,
              786476,
              786495,
              786488,
              786491,
              786491,
              786488,
              786507,
              786500,
              786500,
              786503),
          of(
              "low limit disengage",
              785863.7,
              6.934,
              630.2,
              785859,
              785867,
              785876,
              785872,
              785876,
              785847,
              785855,
              785863,
              785859,
              785863)
        },
        new Crossings[] {
          of(
              "anti-collision engage",
              -47990.7,
              2.683,
              720.2,
              -47981,
              -47988,
              -47985,
              -47984,
              -47985,
              -47993,
              -48001,
              -47997,
              -47996,
              -47997),
          of(
              "anti-collision disengage",
              -47270.5,
              3.041,
              720.2,
              -47281,
              -47273,
              -47276,
              -47277,
              -47276,
              -47269,
              -47260,
              -47264,
              -47265,
              -47264)
        },
        new Crossings[] {
          of(
              "high limit engage",
              -319886.0,
              4.886,
              966.6,
              -319876,
              -319884,
              -319876,
              -319885,
              -319877,
              -319888,
              -319896,
              -319889,
              -319900,
              -319889),
          of(
              "high limit disengage",
              -318919.4,
              3.507,
              966.6,
              -318929,
              -318928,
              -318920,
              -318925,
              -318925,
              -318917,
              -318916,
              -318908,
              -318913,
              -318913)
        },
        new Crossings[] {
          of(
              "high kill engage",
              -328535.7,
              2.280,
              661.4,
              -328529,
              -328525,
              -328529,
              -328528,
              -328532,
              -328544,
              -328540,
              -328544,
              -328541,
              -328545),
          of(
              "high kill disengage",
              -327874.3,
              3.899,
              661.4,
              -327877,
              -327885,
              -327884,
              -327877,
              -327880,
              -327865,
              -327873,
              -327872,
              -327865,
              -327865)
        });
  }

  @ParameterizedTest
  @MethodSource("switches")
  void readingsLieInTheirPublishedBrackets(Crossings engage, Crossings disengage) {
    double[] there = readings(engage);
    double[] back = readings(disengage);
    assertThat(Math.abs(mean(there) - mean(back))).isCloseTo(engage.differential, within(1.0));
    assertThat(engage.differential).isEqualTo(disengage.differential);
  }

  private static double mean(double[] values) {
    return Moments.of(values).mean();
  }

  private static double[] readings(Crossings c) {
    double[] readings = new double[c.before.size()];
    for (int i = 0; i < readings.length; i++) {
      Change change = onlyChange(c.before.get(i), c.at.get(i), i);
      readings[i] = change.place().reading();
      assertThat(readings[i])
          .as("%s %d", c, i + 1)
          .isBetween(
              (double) Math.min(c.before.get(i), c.at.get(i)),
              (double) Math.max(c.before.get(i), c.at.get(i)));
      // One bracket is 10 ms wide; the fit itself is far better than a scan's 12 counts.
      assertThat(change.gapNs()).isCloseTo(10 * Feed.MS, within(Feed.MS / 10));
      assertThat(change.place().u()).isLessThan(12 / Math.sqrt(12));
      assertThat(change.motion()).isEqualTo(Change.Motion.MOVING);
    }
    // A midpoint of whole counts is off by half a count at most; the fit follows the motion.
    assertThat(mean(readings)).as("mean of %s", c).isCloseTo(c.mean, within(0.6));
    assertThat(Moments.of(readings).sd()).as("s of %s", c).isCloseTo(c.s, within(0.8));
    return readings;
  }

  private static Change onlyChange(int before, int at, int seed) {
    int sign = Integer.signum(at - before);
    Rng rng = new Rng(before * 31L + seed);
    Feed feed = new Feed(Feed.settings(1, 1, OptionalDouble.empty(), 1e-4));
    int scans = 100;
    int[] counts = new int[2 * scans + 2];
    counts[scans] = before;
    counts[scans + 1] = at;
    for (int k = 1; k <= scans; k++) {
      counts[scans - k] = before - sign * 12 * k + rng.below(3) - 1;
      counts[scans + 1 + k] = at + sign * 12 * k + rng.below(3) - 1;
    }
    for (int k = 0; k < counts.length; k++) {
      double ms = 10 * k + 0.1 * rng.uniform();
      if (k == 0 || k == scans + 1) {
        feed.row(ms, NONE, 1, k == 0 ? 1 : 0);
      }
      feed.row(ms, counts[k], 0, 0);
    }
    Trace trace = feed.trace();
    assertThat(trace.changes()).hasSize(1);
    assertThat(trace.disturbances()).isEmpty();
    assertThat(trace.losses()).isEmpty();
    assertThat(trace.faults()).isEmpty();
    return trace.changes().get(0);
  }
}
