package tripline.truth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import tripline.job.SensorSide;
import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

/** Sensor and logger of the model. */
class LoggerTest {
  private static final Path STRAIGHT = straight();

  private static Path straight() {
    Path path = new Path(0, 0);
    for (int k = 1; k <= 4000; k++) {
      path.append(k * 0.0005, 0.5);
    }
    return path;
  }

  private static Timeline contactAt(double timeS) {
    Timeline.Builder edges = new Timeline.Builder(0);
    edges.toggle(Math.round(timeS * 1e9), 0);
    return edges.build();
  }

  /** Keeps what it takes. */
  private static final class Tally implements SampleSink {
    int rows;
    int positions;
    int contacts;
    long lastNs = Long.MIN_VALUE;
    long firstClosedNs = -1;
    double squares;

    @Override
    public void onRow(long timeNs, double reading, long known, long closed) {
      rows++;
      positions += Double.isNaN(reading) ? 0 : 1;
      contacts += known == 0 ? 0 : 1;
      squares += Double.isNaN(reading) ? 0 : Math.pow(reading - 0.5e-9 * timeNs, 2);
      if (closed != 0 && firstClosedNs < 0) {
        firstClosedNs = timeNs;
      }
      assertThat(timeNs).isGreaterThanOrEqualTo(lastNs);
      lastNs = timeNs;
    }

    @Override
    public void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {
      throw new AssertionError("no edges from this logger");
    }

    @Override
    public void onMark(long timeNs, Mark mark, String text) {
      throw new AssertionError("no marks here");
    }

    @Override
    public void onLoss(long fromNs, long toNs, long samples) {
      throw new AssertionError("losses are not announced");
    }
  }

  private static Tally record(LoggerPlan plan, Sensor sensor) {
    Tally tally = new Tally();
    new Logger(plan, sensor).record(STRAIGHT, contactAt(1.2345), 1, List.of(), new Rng(5), tally);
    return tally;
  }

  @Test
  void noiseAndCountsAreAsStated() {
    double rms = 0.004;
    Tally noisy = record(LoggerPlan.plain(5000), Sensor.turns(SensorSide.DRIVE, 0, rms));
    assertThat(Math.sqrt(noisy.squares / noisy.rows)).isCloseTo(rms, within(0.03 * rms));
    Tally coarse = record(LoggerPlan.plain(5000), Sensor.turns(SensorSide.DRIVE, 0.01, 0));
    assertThat(Math.sqrt(coarse.squares / coarse.rows))
        .isCloseTo(0.01 / Math.sqrt(12), within(1e-5));
  }

  @Test
  void changesOnlyWritesACoarseEncoderRarely() {
    LoggerPlan plan = LoggerPlan.plain(1000).with(LoggerPlan.Writes.CHANGES_ONLY);
    Tally tally = record(plan, Sensor.turns(SensorSide.DRIVE, 1 / 24.0, 0));
    // two turns of 24 counts and the first row; one change and the first state
    assertThat(tally.positions).isBetween(48, 50);
    assertThat(tally.contacts).isEqualTo(2);
  }

  @Test
  void floorIsTheFormula() {
    Logger logger = new Logger(LoggerPlan.plain(200), Sensor.turns(SensorSide.DRIVE, 0, 0.003));
    logger.record(STRAIGHT, contactAt(1.2345), 1, List.of(), new Rng(5), new Tally());
    TrueChange change = new TrueChange(0, true, 1.2345, 0.61725, 0.61725, 0.5, false, 0);
    Floor floor = Floor.of(change, logger);
    assertThat(floor.readings()).isBetween(199, 201);
    assertThat(floor.fit()).isCloseTo(0.003 / Math.sqrt(200), within(1e-6));
    assertThat(floor.bracket()).isCloseTo(0.5 * 0.005 / Math.sqrt(12), within(1e-4));
  }

  @Test
  void bracketHoldsTheTrueEdge() {
    Tally tally = record(LoggerPlan.plain(200), Sensor.turns(SensorSide.DRIVE, 0, 0));
    assertThat(tally.firstClosedNs).isBetween(1_234_500_000L - 1000, 1_240_500_000L);
  }

  @Test
  void skewMovesThePositionNotTheContact() {
    Tally tally =
        record(LoggerPlan.plain(1000), Sensor.turns(SensorSide.DRIVE, 0, 0).withSkew(0.02));
    assertThat(Math.sqrt(tally.squares / tally.rows)).isCloseTo(0.01, within(1e-4));
    assertThat(tally.firstClosedNs).isLessThan(1_236_000_000L);
  }
}
