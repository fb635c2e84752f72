package tripline.reduce;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.truth.HandStyle;
import tripline.truth.Rng;

/** What must not matter, or matter in one way only. */
class ReductionLawsTest {
  private static final int CHANNELS = 5;

  /** A row of the recording that every law starts from. */
  private record Row(long timeNs, double reading, long closed) {}

  /** A hand stroke there and back with five bouncing contacts, a mark and a stray pulse. */
  private static List<Row> recording(double resolution) {
    Valve valve = new Valve(11, 0.5).rest(1);
    valve.by(
        hand -> {
          hand.to(7);
          hand.to(1);
        },
        HandStyle.somebody(valve.rng, 0.01));
    valve.rest(1);
    Rng rng = new Rng(12);
    List<Row> rows = new ArrayList<>();
    double seconds = valve.actuator.timeS();
    for (int k = 1; k < seconds * 200; k++) {
      double x = valve.actuator.path().handwheelAt(k * 0.005);
      long closed = 0;
      for (int c = 0; c < CHANNELS; c++) {
        boolean bounces = Math.abs(x - 1.5 - c) < 0.004 && rng.chance(0.5);
        closed |= x > 1.5 + c ^ bounces ? 1L << c : 0;
      }
      rows.add(
          new Row(
              k * 5_000_000L,
              Math.rint((x + 0.001 * rng.gaussian()) / resolution) * resolution,
              closed));
    }
    return rows;
  }

  private static ReductionSettings settings(double quantum, double turnsPerUnit) {
    return Feed.settings(CHANNELS, quantum, OptionalDouble.empty(), turnsPerUnit);
  }

  private static Trace trace(ReductionSettings settings, List<Row> rows) {
    Reduction reduction = new Reduction(settings);
    long all = (1 << CHANNELS) - 1;
    for (int i = 0; i < rows.size(); i++) {
      Row r = rows.get(i);
      reduction.onRow(r.timeNs, r.reading, all, r.closed);
      if (i == rows.size() / 2) {
        reduction.onMark(r.timeNs, Mark.NOTE, "half-way");
      }
    }
    return reduction.finish();
  }

  private static final double FINE = 0.0005;
  private static final double COARSE = 1 / 24.0;

  @ParameterizedTest
  @ValueSource(doubles = {FINE, COARSE})
  void thereIsSomethingToJudge(double q) {
    Trace trace = trace(settings(q, 1), recording(q));
    assertThat(trace.changes()).hasSize(2 * CHANNELS);
    assertThat(Valve.moves(trace)).hasSize(2);
    assertThat(trace.losses()).isEmpty();
    assertThat(trace.faults()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(doubles = {FINE, COARSE})
  void shiftingTimeShiftsTimesOnly(double q) {
    long shift = 1_621_596_639_435_647_000L;
    List<Row> rows = recording(q);
    List<Row> later =
        rows.stream().map(r -> new Row(r.timeNs + shift, r.reading, r.closed)).toList();
    Trace a = trace(settings(q, 1), rows);
    Trace b = trace(settings(q, 1), later);
    assertThat(b.firstNs()).isEqualTo(a.firstNs() + shift);
    assertThat(b.movements()).hasSameSizeAs(a.movements());
    for (int i = 0; i < a.movements().size(); i++) {
      assertThat(b.movements().get(i).fromNs()).isEqualTo(a.movements().get(i).fromNs() + shift);
      assertThat(b.movements().get(i).toNs()).isEqualTo(a.movements().get(i).toNs() + shift);
    }
    assertThat(Valve.rests(b))
        .extracting(Movement.Rest::reading)
        .isEqualTo(Valve.rests(a).stream().map(Movement.Rest::reading).toList());
    for (int i = 0; i < a.changes().size(); i++) {
      Change c = a.changes().get(i);
      assertThat(b.changes().get(i))
          .usingRecursiveComparison()
          .isEqualTo(
              new Change(
                  c.channel(),
                  c.to(),
                  c.beforeNs() + shift,
                  c.afterNs() + shift,
                  c.settledNs() + shift,
                  c.bounces(),
                  c.place(),
                  c.motion()));
    }
  }

  /** The same shaft read in other units: count and scale say so, the figures follow. */
  @ParameterizedTest
  @ValueSource(doubles = {FINE, COARSE})
  void scalingTheReadingScalesReadingsOnly(double q) {
    // A power of two, so that not even rounding differs.
    double k = 4096;
    List<Row> rows = recording(q);
    List<Row> scaled = rows.stream().map(r -> new Row(r.timeNs, r.reading * k, r.closed)).toList();
    assertFollows(trace(settings(q, 1), rows), trace(settings(q * k, 1 / k), scaled), k, 1e-9);
  }

  /** A sensor that falls while opening is the mirror image of one that rises. */
  @ParameterizedTest
  @ValueSource(doubles = {FINE, COARSE})
  void negatingTheReadingMirrors(double q) {
    List<Row> rows = recording(q);
    List<Row> negated = rows.stream().map(r -> new Row(r.timeNs, -r.reading, r.closed)).toList();
    assertFollows(trace(settings(q, 1), rows), trace(settings(q, -1), negated), -1, 1e-9);
  }

  private static void assertFollows(Trace a, Trace b, double k, double relative) {
    assertThat(b.noise()).isCloseTo(Math.abs(k) * a.noise(), within(1e-6 * Math.abs(k)));
    assertThat(b.scanNs()).isEqualTo(a.scanNs());
    assertThat(b.changes()).hasSameSizeAs(a.changes());
    for (int i = 0; i < a.changes().size(); i++) {
      Change c = a.changes().get(i);
      Change d = b.changes().get(i);
      assertThat(d.channel()).isEqualTo(c.channel());
      assertThat(d.to()).isEqualTo(c.to());
      assertThat(d.afterNs()).isEqualTo(c.afterNs());
      assertThat(d.motion()).isEqualTo(c.motion());
      double size = Math.abs(k) * 10;
      assertThat(d.place().reading()).isCloseTo(k * c.place().reading(), within(relative * size));
      assertThat(d.place().u()).isCloseTo(Math.abs(k) * c.place().u(), within(relative * size));
      assertThat(d.place().speed()).isCloseTo(k * c.place().speed(), within(relative * size));
    }
    assertThat(b.movements()).hasSameSizeAs(a.movements());
    for (int i = 0; i < a.movements().size(); i++) {
      Movement m = a.movements().get(i);
      Movement n = b.movements().get(i);
      assertThat(n.fromNs()).isEqualTo(m.fromNs());
      assertThat(n.toNs()).isEqualTo(m.toNs());
      if (m instanceof Movement.Move move) {
        assertThat(((Movement.Move) n).sign()).isEqualTo((int) Math.signum(k) * move.sign());
        assertThat(((Movement.Move) n).stopping().onsetNs()).isEqualTo(move.stopping().onsetNs());
      }
    }
  }

  @Test
  void permutingChannelsPermutesOnly() {
    int[] to = {3, 0, 4, 1, 2};
    List<Row> rows = recording(FINE);
    List<Row> permuted =
        rows.stream().map(r -> new Row(r.timeNs, r.reading, permuted(r.closed, to))).toList();
    Trace a = trace(settings(FINE, 1), rows);
    Trace b = trace(settings(FINE, 1), permuted);
    assertThat(b.movements()).isEqualTo(a.movements());
    assertThat(b.changes()).hasSameSizeAs(a.changes());
    for (Change c : a.changes()) {
      assertThat(b.changes())
          .filteredOn(d -> d.channel() == to[c.channel()] && d.afterNs() == c.afterNs())
          .singleElement()
          .satisfies(
              d -> {
                assertThat(d.to()).isEqualTo(c.to());
                assertThat(d.bounces()).isEqualTo(c.bounces());
                assertThat(d.place().reading()).isCloseTo(c.place().reading(), within(1e-12));
              });
    }
    assertThat(b.start().closed()).isEqualTo(permuted(a.start().closed(), to));
  }

  private static long permuted(long mask, int[] to) {
    long out = 0;
    for (int c = 0; c < to.length; c++) {
      out |= (mask >>> c & 1) << to[c];
    }
    return out;
  }

  /** Inverted contacts: the same changes, to the other state. */
  @Test
  void invertingContactsInvertsStatesOnly() {
    List<Row> rows = recording(FINE);
    List<Row> inverted = rows.stream().map(r -> new Row(r.timeNs, r.reading, ~r.closed)).toList();
    Trace a = trace(settings(FINE, 1), rows);
    Trace b = trace(settings(FINE, 1), inverted);
    for (int i = 0; i < a.changes().size(); i++) {
      Change c = a.changes().get(i);
      ContactState other = c.to().other();
      assertThat(b.changes().get(i))
          .isEqualTo(
              new Change(
                  c.channel(),
                  other,
                  c.beforeNs(),
                  c.afterNs(),
                  c.settledNs(),
                  c.bounces(),
                  c.place(),
                  c.motion()));
    }
  }

  /** Asking for the trace on the way changes nothing. */
  @Test
  void askingEarlyDoesNotMatter() {
    List<Row> rows = recording(FINE);
    Reduction asked = new Reduction(settings(FINE, 1));
    Reduction plain = new Reduction(settings(FINE, 1));
    for (int i = 0; i < rows.size(); i++) {
      Row r = rows.get(i);
      asked.onRow(r.timeNs, r.reading, 31, r.closed);
      plain.onRow(r.timeNs, r.reading, 31, r.closed);
      if (i % 400 == 399) {
        asked.finish();
      }
    }
    assertThat(asked.finish()).isEqualTo(plain.finish());
    assertThat(asked.finish()).isEqualTo(plain.finish());
  }
}
