package tripline.harness.rehearse.valve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import tripline.harness.rehearse.ShippedSheets;
import tripline.job.End;
import tripline.job.JobSheet;

class VirtualValveTest {
  private static final JobSheet SHEET = ShippedSheets.motor();

  private static VirtualValve valve(long seed) {
    return new VirtualValve(ValveBuild.of(SHEET, Setting.MIS_SET, seed), seed);
  }

  private static void run(VirtualValve valve, Mover mover) {
    while (mover.step(valve)) {
      assertThat(valve.nowNs()).isLessThan(600_000_000_000L);
    }
  }

  private static void touch(VirtualValve valve, End end) {
    run(valve, Hand.toStop(valve, end, OptionalDouble.empty()));
  }

  @Test
  void theSameSeedIsTheSameValveToTheLastBit() {
    List<Double> once = new ArrayList<>();
    List<Double> again = new ArrayList<>();
    for (List<Double> into : List.of(once, again)) {
      VirtualValve valve = valve(7);
      Mover hand = Hand.toStop(valve, End.OPEN, OptionalDouble.empty());
      while (hand.step(valve)) {
        into.add(valve.driveTurns());
        into.add((double) valve.countAt(valve.nowNs()));
      }
    }
    assertThat(again).isEqualTo(once).hasSizeGreaterThan(5000);
    assertThat(Truth.of(valve(8))).isNotEqualTo(Truth.of(valve(7)));
  }

  /**
   * Common practice: turning back, the handwheel moves the lost motion before the drive follows.
   */
  @Test
  void theDriveFollowsTheHandwheelThroughTheLostMotion() {
    VirtualValve valve = valve(1);
    double play = valve.build().lostMotionTurns();
    touch(valve, End.CLOSED);
    double stop = valve.driveTurns();
    run(valve, Hand.turns(valve, End.OPEN, play * 0.9, OptionalDouble.of(0.2)));
    assertThat(valve.driveTurns()).isEqualTo(stop);
    run(valve, Hand.turns(valve, End.OPEN, 1, OptionalDouble.empty()));
    double lifted = valve.driveTurns();
    // The hand let go of the stop by a little before it turned back.
    assertThat(lifted - stop).isCloseTo(0.9 * play + 1 - play, within(0.01));
    run(valve, Hand.turns(valve, End.CLOSED, play / 2, OptionalDouble.empty()));
    assertThat(valve.driveTurns()).isEqualTo(lifted);
  }

  @ParameterizedTest
  @EnumSource(End.class)
  void aHandFeelsTheHardStopAndCannotPassIt(End end) {
    VirtualValve valve = valve(3);
    touch(valve, end);
    double stop = valve.build().stopTurns(end);
    assertThat(valve.driveTurns()).isCloseTo(stop, within(4 * SHEET.end(end).stopUTurns()));
    double here = valve.handwheelTurns();
    run(valve, Hand.turns(valve, end, 5, OptionalDouble.empty()));
    assertThat(valve.handwheelTurns()).isCloseTo(here, within(0.08));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void limitsAreMisSetByMoreThanTheirToleranceAndTripWhereTheTruthSays(long seed) {
    VirtualValve valve = valve(seed);
    for (int cam = 0; cam < valve.build().cams().size(); cam++) {
      CamBuild built = valve.build().cams().get(cam);
      CamBuild.Point point = built.points().get(0);
      double off = Math.abs(valve.tripTurns(cam, 0) - point.targetTurns());
      if (built.name().equals("close") || built.name().equals("open")) {
        assertThat(off).isBetween(1.2 * point.toleranceTurns(), 3.3 * point.toleranceTurns());
      }
    }
    touch(valve, End.OPEN);
    assertThat(limitTrip(valve, End.CLOSED)).isCloseTo(valve.tripTurns(0, 0), within(1e-3));
  }

  /** Where the limit contact's first edge was, from the motion itself. */
  private static double limitTrip(VirtualValve valve, End end) {
    Mover hand = Hand.toStop(valve, end, OptionalDouble.empty());
    int channel = valve.channels().indexOf("k1");
    while (hand.step(valve)) {
      for (int i = 0; i < valve.edges(); i++) {
        if (valve.edgeChannel(i) == channel) {
          return valve.driveTurns();
        }
      }
    }
    throw new AssertionError("the limit contact did not change");
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void aValveSetRightIsWithinEveryTolerance(long seed) {
    VirtualValve valve = new VirtualValve(ValveBuild.of(SHEET, Setting.RIGHT, seed), seed);
    assertThat(Truth.of(valve)).noneMatch(line -> line.endsWith("wrong"));
    assertThat(Truth.of(valve(seed))).anyMatch(line -> line.endsWith("wrong"));
  }

  @Test
  void anAdjusterMovesATripPointAndSettingPutsItWhereTheValveStands() {
    VirtualValve valve = valve(4);
    double before = valve.tripTurns(0, 0);
    run(valve, Adjuster.turn(0, -0.2));
    assertThat(valve.tripTurns(0, 0)).isCloseTo(before - 0.2, within(1e-9));
    touch(valve, End.CLOSED);
    double lifted = valve.build().lostMotionTurns() + 0.5;
    run(valve, Hand.turns(valve, End.OPEN, lifted, OptionalDouble.empty()));
    run(valve, Adjuster.untilItTrips(valve, 0));
    assertThat(valve.tripTurns(0, 0)).isCloseTo(valve.driveTurns(), within(2e-4));
    touch(valve, End.OPEN);
    assertThat(limitTrip(valve, End.CLOSED)).isCloseTo(valve.tripTurns(0, 0), within(1e-3));
  }

  /**
   * Integral of dv/dt = -(f + v/T) from v0 to rest: t = T ln(1 + v0/(f T)), way = T (v0 - f t).
   * First-order linear equation, any textbook of mechanics.
   */
  @Test
  void aMotorCoastsAsItsLawSays() {
    VirtualValve valve = valve(2);
    MotorBuild motor = valve.build().motor();
    run(valve, Hand.to(valve, 5, OptionalDouble.empty()));
    Mover running = new Motor(valve, End.OPEN);
    for (int i = 0; i < 1500; i++) {
      running.step(valve);
    }
    assertThat(valve.turnsPerS()).isCloseTo(motor.turnsPerS(), within(1e-9));
    running.stop();
    double from = valve.driveTurns();
    run(valve, running);
    double fT = motor.frictionPerS2() * motor.viscousS();
    double time = motor.viscousS() * Math.log(1 + motor.turnsPerS() / fT);
    double way = motor.viscousS() * (motor.turnsPerS() - motor.frictionPerS2() * time);
    double powered = (motor.dropOutS() + 0.001) * motor.turnsPerS();
    assertThat(valve.driveTurns() - from).isCloseTo(powered + way, within(1e-3));
  }

  @Test
  void aMotorStopsOnItsLimitAndIsKeptOutThere() {
    VirtualValve valve = valve(2);
    run(valve, new Motor(valve, End.CLOSED));
    double stood = valve.driveTurns();
    assertThat(stood).isBetween(0.0, valve.tripTurns(0, 0));
    run(valve, new Motor(valve, End.CLOSED));
    assertThat(valve.driveTurns()).isEqualTo(stood);
  }

  @Test
  void aMotorWithoutItsLimitStopsOnTorqueAtTheHardStop() {
    JobSheet seated = ShippedSheets.of("torque-seated");
    VirtualValve valve = new VirtualValve(ValveBuild.of(seated, Setting.RIGHT, 1), 1);
    run(valve, new Motor(valve, End.CLOSED));
    assertThat(valve.build().motor().torqueSeated()).contains(End.CLOSED);
    assertThat(valve.driveTurns()).isBetween(-0.2, -valve.build().motor().torqueTripTurns());
    assertThat(valve.torqueOpen(End.CLOSED)).isTrue();
    run(valve, Hand.turns(valve, End.OPEN, 1, OptionalDouble.empty()));
    assertThat(valve.torqueOpen(End.CLOSED)).isFalse();
  }

  /** Published bench test of mechanical switches: mean burst 1.557 ms, longest 6.2 ms. */
  @Test
  void contactsBounceAsMeasuredSwitchesDo() {
    Toggles toggles = new Toggles(0, new Chance(5));
    double sum = 0;
    double most = 0;
    int changes = 4000;
    for (int i = 0; i < changes; i++) {
      long at = i * 20_000_000L;
      toggles.change(3, at);
      toggles.passTo(at + 10_000_000L);
      assertThat(toggles.count() % 2).isOne();
      double burst = (toggles.timeNs(toggles.count() - 1) - at) * 1e-9;
      sum += burst;
      most = Math.max(most, burst);
      assertThat(toggles.closedAt(at + 10_000_000L)).isEqualTo(i % 2 == 0 ? 8 : 0);
    }
    assertThat(most).isLessThanOrEqualTo(0.0062);
    // The last bounce lies up to one toggle before the burst's drawn end.
    assertThat(sum / changes).isBetween(0.0008, 0.001557);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.0005, 1.0 / 24, 0.1, 2.5, 1.0 / 4096, 0.0123456789})
  void aScaleIsStatedAsTheLinkStatesIt(double unitsPerCount) {
    Fraction fraction = Fraction.near(unitsPerCount);
    assertThat((double) fraction.numerator() / fraction.denominator())
        .isCloseTo(unitsPerCount, within(1e-9 * unitsPerCount));
  }

  @Test
  void aCountOfTwentyFourATurnIsOneOverTwentyFour() {
    assertThat(Fraction.near(1.0 / 24)).isEqualTo(new Fraction(1, 24));
    assertThat(Fraction.near(0.0005)).isEqualTo(new Fraction(1, 2000));
  }
}
