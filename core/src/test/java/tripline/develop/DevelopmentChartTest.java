package tripline.develop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import tripline.develop.Stretch.State;
import tripline.job.Direction;
import tripline.job.End;
import tripline.job.SensorSide;
import tripline.truth.ActuatorPlan;
import tripline.truth.Sensor;

/** The chart as built against the model's cams. */
class DevelopmentChartTest {
  private static final Sensor SENSOR = Sensor.turns(SensorSide.HANDWHEEL, 0, 0);

  private static Development develop(HandJob job) {
    return HandJob.develop(Demo.sheet(), job.recording(SENSOR));
  }

  private static void assertStretches(List<Stretch> seen, State[] states, double... bounds) {
    assertThat(seen).extracting(Stretch::state).containsExactly(states);
    for (int i = 0; i < seen.size(); i++) {
      assertThat(seen.get(i).from()).isCloseTo(bounds[i], within(1e-6));
      assertThat(seen.get(i).to()).isCloseTo(bounds[i + 1], within(1e-6));
    }
  }

  @Test
  void fullStrokesShowEveryStretchInBothDirections() {
    DevelopmentChart chart =
        DevelopmentChart.of(develop(new HandJob(Demo.actuator(), 4, 1).fullStrokes(true)), 0);
    State[] openClosed = {State.OPEN, State.CLOSED};
    State[] window = {State.OPEN, State.CLOSED, State.OPEN};
    assertStretches(chart.stretches(0, Direction.CLOSING), openClosed, 0, 0.5, 12);
    assertStretches(chart.stretches(4, Direction.OPENING), openClosed, 0, 3.03, 12);
    assertStretches(chart.stretches(4, Direction.CLOSING), openClosed, 0, 3, 12);
    assertStretches(chart.stretches(5, Direction.OPENING), window, 0, 5.02, 7.02, 12);
    assertStretches(chart.stretches(5, Direction.CLOSING), window, 0, 5, 7, 12);
    assertThat(chart.at(5, Direction.OPENING, 6)).isEqualTo(State.CLOSED);
    assertThat(chart.at(5, Direction.OPENING, 13)).isEqualTo(State.UNKNOWN);
  }

  @Test
  void whatWasNotTravelledIsUnknown() {
    HandJob job = new HandJob(Demo.actuator(), 4, 2);
    job.hand.toStop(End.CLOSED, "closed-stop");
    job.hand.to(2);
    DevelopmentChart chart = DevelopmentChart.of(develop(job), 0);
    assertThat(chart.at(4, Direction.OPENING, 1)).isEqualTo(State.OPEN);
    assertThat(chart.at(4, Direction.OPENING, 3.5)).isEqualTo(State.UNKNOWN);
    assertThat(chart.at(4, Direction.CLOSING, 3.5)).isEqualTo(State.CLOSED);
  }

  @Test
  void scatterIsOneTripPointAndAWanderingContactVaries() {
    ActuatorPlan scattering = Demo.actuator().withCam("quarter", cam -> cam.withScatter(0.005));
    HandJob job = new HandJob(scattering, 4, 3).fullStrokes(true).fullStrokes(true);
    DevelopmentChart chart = DevelopmentChart.of(develop(job), 0);
    assertThat(chart.stretches(4, Direction.CLOSING))
        .extracting(Stretch::state)
        .containsExactly(State.OPEN, State.CLOSED);

    ActuatorPlan drifting = Demo.actuator().withCam("quarter", cam -> cam.withDrift(0.3));
    HandJob creeping = new HandJob(drifting, 4, 3).fullStrokes(true).fullStrokes(true);
    DevelopmentChart varying = DevelopmentChart.of(develop(creeping), 0);
    assertThat(varying.stretches(4, Direction.CLOSING))
        .extracting(Stretch::state)
        .containsExactly(State.OPEN, State.VARIES, State.CLOSED);
  }

  @Test
  void aContactThatNeverChangesIsKnownAllTheSame() {
    ActuatorPlan stuck =
        Demo.actuator()
            .withContact(
                "43-44", c -> c.withWiring(tripline.truth.ContactPlan.Wiring.STUCK_CLOSED));
    DevelopmentChart chart =
        DevelopmentChart.of(develop(new HandJob(stuck, 4, 4).fullStrokes(true)), 0);
    assertStretches(chart.stretches(4, Direction.OPENING), new State[] {State.CLOSED}, 0, 12);
  }
}
