package tripline.matrix;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import tripline.cases.Recording;
import tripline.develop.Stroke;
import tripline.job.JobSheet;
import tripline.sample.ContactState;
import tripline.sample.Drive;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

/**
 * A logger that filters its limit contacts for longer than a contactor takes to fall out, and says
 * so: by the stamps the motor stops before its contact opens, in truth after.
 */
class FilteredInputsTest {
  private static final double DELAY_S = 0.15;
  private static final int VALVES = 10;

  @Test
  void theOrderOfEventsIsThatBeforeTheFilters() {
    int limits = 0;
    for (long seed = 7000; seed < 7000 + 2 * VALVES; seed += 2) {
      Setup setup = new Setup(seed);
      Specimen valve = Faults.healthy(setup);
      for (Stroke stroke : strokes(valve, (int) Math.round(DELAY_S / setup.scanS()), true)) {
        assertThat(stroke.stoppedBy()).as("seed %d", seed).isEqualTo(Stroke.StoppedBy.LIMIT);
        limits++;
      }
    }
    assertThat(limits).isGreaterThanOrEqualTo(2 * VALVES);
  }

  @Test
  void whoKeepsTheFilterToHimselfIsNotBelieved() {
    Setup setup = new Setup(7000);
    assertThat(strokes(Faults.healthy(setup), (int) Math.round(DELAY_S / setup.scanS()), false))
        .noneMatch(stroke -> stroke.stoppedBy() == Stroke.StoppedBy.LIMIT);
  }

  /** Powered strokes of a valve whose limit contacts come late by so many rows. */
  private static List<Stroke> strokes(Specimen valve, int rows, boolean told) {
    JobSheet sheet = valve.sheet();
    List<Recording> recordings = valve.recordings();
    double scanS = 1 / recordings.get(0).logger().plan().rateHz();
    List<Long> delaysNs = new ArrayList<>();
    long late = 0;
    for (String channel : sheet.channels().contacts()) {
      boolean limit =
          sheet.contacts().stream()
              .anyMatch(c -> c.channel().equals(channel) && c.role().limitOf().isPresent());
      late |= limit ? 1L << delaysNs.size() : 0;
      delaysNs.add(limit ? Math.round(rows * scanS * 1e9) : 0L);
    }
    long filtered = late;
    return Answer.develop(
            sheet, recordings, sink -> new Late(sink, filtered, rows), told ? delaysNs : List.of())
        .strokes()
        .stream()
        .filter(s -> recordings.get(s.recording()).drive() == Drive.MOTOR)
        .toList();
  }

  /** Holds some channels back by a number of rows. */
  private static final class Late implements SampleSink {
    private final SampleSink next;
    private final long mask;
    private final long[] before;
    private long rows;

    Late(SampleSink next, long mask, int by) {
      this.next = next;
      this.mask = mask;
      before = new long[by];
    }

    @Override
    public void onRow(long timeNs, double reading, long known, long closed) {
      int at = (int) (rows++ % before.length);
      long held = rows <= before.length ? closed : before[at];
      before[at] = closed;
      next.onRow(timeNs, reading, known, (closed & ~mask) | (held & mask));
    }

    @Override
    public void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {
      throw new AssertionError("the model's loggers write rows");
    }

    @Override
    public void onMark(long timeNs, Mark mark, String text) {
      next.onMark(timeNs, mark, text);
    }

    @Override
    public void onLoss(long fromNs, long toNs, long samples) {
      next.onLoss(fromNs, toNs, samples);
    }
  }
}
