package tripline.harness.summary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import tripline.job.End;
import tripline.measure.Decision;

/** A trend is a matter of one setting. */
class TrendTest {
  private static final Instant START = Instant.parse("2024-03-01T08:00:00Z");
  private final List<ResultLine> results = new ArrayList<>();

  @Test
  void runsOverAllResultsOfOneSetting() {
    add(0.50, false, false);
    add(0.53, false, false);
    add(0.56, false, false);
    Actuator it = new Actuator("CW-1", results);
    assertThat(it.backoffChange(End.CLOSED).value()).isEqualTo(0.06, within(1e-12));
    assertThat(it.history()).isEqualTo("aaa");
    assertThat(it.adjustments()).isZero();
    assertThat(it.setSince(End.CLOSED)).isEqualTo(START);
  }

  @Test
  void beginsAnewAtAnAdjustmentThatARecordingShows() {
    add(0.56, false, false);
    add(0.50, false, true);
    assertThat(new Actuator("CW-1", results).backoffChange(End.CLOSED)).isNull();
    add(0.51, false, false);
    Actuator it = new Actuator("CW-1", results);
    assertThat(it.backoffChange(End.CLOSED).value()).isEqualTo(0.01, within(1e-12));
    assertThat(it.backoffChange(End.OPEN).value()).isZero();
    assertThat(it.history()).isEqualTo("a|aa");
    assertThat(it.adjustments()).isEqualTo(1);
    assertThat(it.setSince(End.OPEN)).isEqualTo(START.plus(1, ChronoUnit.DAYS));
  }

  @Test
  void beginsAnewWhereARejectedEndCameNearerToItsTarget() {
    add(0.70, true, false);
    add(0.51, false, false);
    Actuator it = new Actuator("CW-1", results);
    assertThat(it.backoffChange(End.CLOSED)).isNull();
    assertThat(it.backoffChange(End.OPEN).value()).as("the other end was left alone").isZero();
    assertThat(it.history()).isEqualTo("R|a");
  }

  @Test
  void runsOnWhereARejectedEndGotWorseOrDidNotMove() {
    add(0.70, true, false);
    add(0.75, true, false);
    add(0.745, true, false);
    Actuator it = new Actuator("CW-1", results);
    assertThat(it.backoffChange(End.CLOSED).value()).isEqualTo(0.045, within(1e-12));
    assertThat(it.adjustments()).isZero();
  }

  @Test
  void beginsAnewWhereTheSheetAsksForSomethingElse() {
    add(0.50, false, false);
    EndLine other = new EndLine(new Figure(0.75, 0.01), 0.75, false, null);
    add(other, margin(0.4), false);
    Actuator it = new Actuator("CW-1", results);
    assertThat(it.backoffChange(End.CLOSED)).isNull();
    assertThat(it.history()).isEqualTo("a|a");
  }

  @Test
  void theMarginsTrendIsThatOfOneEnd() {
    add(end(0.5, false, 0.30), margin(0.45), false);
    add(end(0.5, false, 0.40), margin(0.35), false);
    Actuator it = new Actuator("CW-1", results);
    assertThat(it.margin().value()).isEqualTo(0.35);
    assertThat(it.marginChange().value())
        .as("of the open end, not from end to end")
        .isEqualTo(-0.10, within(1e-12));
  }

  @Test
  void ofOneRecordingTheLaterAnalysisCounts() {
    ResultLine early = line(START, START.plusSeconds(60), "z.json", Decision.REJECT);
    ResultLine late = line(START, START.plusSeconds(90), "a.json", Decision.ACCEPT);
    assertThat(new Actuator("CW-1", List.of(late, early)).latest()).isSameAs(late);
    ResultLine same = line(START, START.plusSeconds(90), "b.json", Decision.UNDECIDED);
    assertThat(new Actuator("CW-1", List.of(same, late)).latest())
        .as("then the name")
        .isSameAs(same);
  }

  @Test
  void theHistoryKeepsTheLastEightSigns() {
    for (int i = 0; i < 7; i++) {
      add(0.5, false, i == 5);
    }
    add(0.8, true, false);
    assertThat(new Actuator("CW-1", results).history()).isEqualTo("aaaa|aaR");
  }

  private void add(double backoff, boolean rejected, boolean adjusted) {
    add(end(backoff, rejected, null), end(0.5, false, null), adjusted);
  }

  private void add(EndLine closed, EndLine open, boolean adjusted) {
    Instant when = START.plus(results.size(), ChronoUnit.DAYS);
    Decision decision = closed.rejected() ? Decision.REJECT : Decision.ACCEPT;
    results.add(
        new ResultLine("CW-1", "r.json", when, when, decision, adjusted, closed, open, 0, 0, null));
  }

  private static ResultLine line(Instant when, Instant written, String file, Decision decision) {
    return new ResultLine(
        "CW-1", file, when, written, decision, false, EndLine.NONE, EndLine.NONE, 0, 0, null);
  }

  private static EndLine margin(double margin) {
    return end(0.5, false, margin);
  }

  private static EndLine end(double backoff, boolean rejected, @Nullable Double margin) {
    Figure left = margin == null ? null : new Figure(margin, 0.01);
    return new EndLine(new Figure(backoff, 0.01), 0.5, rejected, left);
  }
}
