package tripline.truth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import tripline.job.ClosedWhere;
import tripline.job.End;
import tripline.job.Role;

/**
 * The powered stroke against the integral of its stated deceleration law and the order of its
 * events.
 */
class MotorDriveTest {
  private static ActuatorPlan plan(double closeTrip) {
    return new ActuatorPlan(
        6,
        0.2,
        List.of(CamPlan.at("close", closeTrip, 0.03)),
        List.of(
            new ContactPlan(
                "21-22",
                "k1",
                "close",
                ClosedWhere.OPEN_SIDE,
                Role.LIMIT_CLOSING,
                0.01,
                ContactPlan.Wiring.SOUND)),
        Auxiliaries.ALL);
  }

  @Test
  void coastIsDropOutAndTheIntegralOfTheLaw() {
    Actuator actuator = new Actuator(plan(0.5), 3, new Rng(1));
    MotorPlan motor = MotorPlan.steady(0.65).withCoast(0.040, 1.5, 0.3);
    PoweredStroke stroke = new MotorDrive(actuator, motor, new Rng(2)).run(End.CLOSED);
    assertThat(stroke.cause()).isEqualTo(PoweredStroke.Cause.LIMIT);
    double law = 0.65 * 0.040 + motor.coastTurns(0.65);
    // the contactor drops out at the end of a simulation step: up to one step later
    assertThat(stroke.coast()).isBetween(law - 1e-5, law + 0.65 * Path.STEP_S + 1e-4);
    assertThat(stroke.stillS() - stroke.onsetS()).isCloseTo(motor.coastS(0.65), within(0.0015));
  }

  @Test
  void aLimitBeyondTheStopLeavesItToTheTorqueContact() {
    Actuator actuator = new Actuator(plan(-1), 3, new Rng(1));
    PoweredStroke stroke =
        new MotorDrive(actuator, MotorPlan.steady(0.65), new Rng(2)).run(End.CLOSED);
    assertThat(stroke.cause()).isEqualTo(PoweredStroke.Cause.TORQUE);
    assertThat(stroke.coast()).isNaN();
    assertThat(stroke.stillX()).isBetween(-0.2, -0.08);
    assertThat(actuator.torqueOpen(End.CLOSED)).isTrue();
    int t1 = actuator.plan().channels().indexOf("t1");
    assertThat(actuator.changes()).anyMatch(c -> c.channel() == t1 && !c.closed());
  }

  @Test
  void theOperatorStopsItWhereHeLikes() {
    Actuator actuator = new Actuator(plan(0.5), 3, new Rng(1));
    PoweredStroke stroke =
        new MotorDrive(actuator, MotorPlan.steady(0.65), new Rng(2))
            .run(End.CLOSED, 1.7, PoweredStroke.Cause.OPERATOR);
    assertThat(stroke.cause()).isEqualTo(PoweredStroke.Cause.OPERATOR);
    assertThat(stroke.onsetX()).isBetween(1.6, 1.7);
    assertThat(stroke.stillX()).isLessThan(stroke.onsetX());
  }

  @Test
  void steadySpeedIsSteady() {
    Actuator actuator = new Actuator(plan(0.5), 3, new Rng(1));
    new MotorDrive(actuator, MotorPlan.steady(0.65), new Rng(2)).run(End.CLOSED);
    for (double t = 1; t < 2; t += 0.0137) {
      assertThat(actuator.path().handwheelSpeedAt(t)).isCloseTo(-0.65, within(1e-9));
    }
  }
}
