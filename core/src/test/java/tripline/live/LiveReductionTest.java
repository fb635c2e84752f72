package tripline.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tripline.StrokeAnalysis;
import tripline.job.End;
import tripline.reduce.Reduction;
import tripline.reduce.ReductionSettings;
import tripline.sample.ContactState;
import tripline.sample.Drive;
import tripline.sample.Mark;
import tripline.travel.RecordingTrace;

/** Looking on: what was read last, what may have changed the answer, and the answer itself. */
class LiveReductionTest {
  private final ReductionSettings settings = Rig.settings(Sites.sheet(Sites.FINE));
  private final LiveReduction live = new LiveReduction(settings);
  private long timeNs;

  private void rows(int count, double from, double step, long known, long closed) {
    for (int i = 0; i < count; i++) {
      timeNs += 5_000_000;
      live.onRow(timeNs, from + i * step, known, closed);
    }
  }

  @Test
  void showsTheLatestStates() {
    assertThat(live.now().reading()).isNaN();
    rows(1, 3, 0, 3, 1);
    live.onRow(timeNs, Double.NaN, 4, 4);
    assertThat(live.now()).returns(7L, Now::known).returns(5L, Now::closed);
    live.onEdge(timeNs + 1, 1, 0, ContactState.OPEN);
    assertThat(live.now()).returns(4L, Now::closed).returns(timeNs + 1, Now::timeNs);
    assertThat(live.now().with(15, 8)).returns(15L, Now::known).returns(8L, Now::closed);
  }

  @Test
  void countsWhatMayChangeTheAnswer() {
    rows(100, 3, 0, 15, 1);
    long before = live.happenings();
    rows(100, 3, 0, 15, 1);
    assertThat(live.happenings()).as("nothing happens").isEqualTo(before);
    rows(1, 3, 0, 15, 3);
    assertThat(live.happenings()).as("a contact changes").isEqualTo(++before);
    live.onMark(timeNs, Mark.NOTE, "x");
    live.onLoss(timeNs, timeNs, 1);
    live.onEdge(timeNs, 1, 1, ContactState.OPEN);
    assertThat(live.happenings()).isEqualTo(before + 3);
    rows(100, 3, 0.003, 15, 1);
    assertThat(live.happenings()).as("it begins to move").isEqualTo(before + 4);
    assertThat(live.now().motion()).isEqualTo(Now.Motion.RISING);
    assertThat(live.now().reading()).isCloseTo(3.3, within(0.02));
  }

  @Test
  void takesSamplesWithoutAllocating() {
    rows(200_000, 0, 1e-6, 15, 1);
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    long before = threads.getCurrentThreadAllocatedBytes();
    rows(500_000, 0.2, 1e-6, 15, 1);
    assertThat(threads.getCurrentThreadAllocatedBytes() - before).isLessThan(64 * 1024);
  }

  /** The live answer is that of a recording which ends there. */
  @Test
  void answersAsAFinishedRecordingDoes() {
    Rig rig = Sites.rig(Sites.FINE, 0.85, 2.5, Sites.SPAN - 0.2, 91);
    rig.turn(-100);
    rig.mark(End.CLOSED);
    for (double turns : new double[] {4, -1, 100, -3}) {
      rig.turn(turns);
      LiveAnswer answer = rig.answer();
      Reduction copy = rig.live.spare();
      rig.live.copyTo(copy);
      RecordingTrace recording =
          new RecordingTrace("live", "", Drive.HAND, RecordingTrace.Zero.LOST, copy.finish());
      assertThat(answer.result())
          .isEqualTo(StrokeAnalysis.of(answer.sheet(), List.of(recording), Optional.empty()));
    }
  }
}
