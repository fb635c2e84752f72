package tripline.harness.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import org.junit.jupiter.api.Test;
import tripline.harness.report.Glyphs;
import tripline.job.End;
import tripline.live.LiveAnswer;
import tripline.live.Rig;
import tripline.live.Sites;

/** A line an event, each once. */
class EventLinesTest {
  private final StringWriter text = new StringWriter();
  private final EventLines lines =
      new EventLines(new PrintWriter(text), new Speech(Glyphs.UNICODE));
  private final Rig rig = Sites.rig(Sites.FINE, 0.85, 2.5, Sites.SPAN - 0.53, 8);

  private View.Seen seen() {
    LiveAnswer answer = rig.answer();
    return View.Seen.of(answer, rig.live.now());
  }

  private List<String> told() {
    return text.toString().lines().toList();
  }

  @Test
  void tellsEachThingOnceInItsOrder() {
    lines.onSeen(seen());
    rig.turn(-100);
    rig.mark(End.CLOSED);
    for (int k = 0; k < 3; k++) {
      lines.onSeen(seen());
    }
    assertThat(told())
        .satisfiesExactly(
            l -> assertThat(l).contains(" s  step    FIND A STOP: Run by hand"),
            l -> assertThat(l).endsWith(" s  stop    closed stop by mark"),
            l -> assertThat(l).contains(" s  change  11-12    opened  at 0.85").endsWith("closing"),
            l -> assertThat(l).contains(" s  change  23-24    closed  at 0.85"),
            l -> assertThat(l).endsWith(" s  so far  REJECT"),
            l -> assertThat(l).contains(" s  step    CLOSED END: GO PAST THE TARGET FIRST: Turn"));
  }

  /** A change is told when its figures are good, or when there is no more to come. */
  @Test
  void waitsForTheReadingsAboutAChange() {
    rig.turn(-100);
    rig.mark(End.CLOSED);
    rig.turnWithoutStopping(1.2);
    lines.onSeen(seen());
    assertThat(told()).filteredOn(l -> l.contains("opening")).isEmpty();
    lines.onEnd(seen());
    assertThat(told()).filteredOn(l -> l.contains("opening")).hasSize(2);
    lines.onEnd(seen());
    assertThat(told()).filteredOn(l -> l.contains("opening")).hasSize(2);
  }
}
