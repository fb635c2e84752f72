package tripline.truth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import tripline.job.ClosedWhere;
import tripline.job.End;
import tripline.job.Role;

/** Cams, contacts and stops of the model against the laws of trade.md it is built by. */
class ActuatorTest {
  private static ActuatorPlan twoContacts() {
    return new ActuatorPlan(
        4,
        0.25,
        List.of(CamPlan.at("c", 2, 0.05)),
        List.of(
            new ContactPlan(
                "21-22",
                "k1",
                "c",
                ClosedWhere.OPEN_SIDE,
                Role.SPARE,
                0.02,
                ContactPlan.Wiring.SOUND),
            new ContactPlan(
                "23-24",
                "k2",
                "c",
                ClosedWhere.CLOSED_SIDE,
                Role.SPARE,
                0.02,
                ContactPlan.Wiring.SOUND)),
        Auxiliaries.NONE);
  }

  private static Actuator stroked() {
    Actuator actuator = new Actuator(twoContacts(), 1, new Rng(1));
    HandCrank hand = new HandCrank(actuator, HandStyle.somebody(new Rng(2), 0.01), new Rng(3));
    hand.toStop(End.OPEN, "");
    hand.toStop(End.CLOSED, "");
    return actuator;
  }

  @Test
  void camTripsLaterOnTheWayBackAndContactsBreakBeforeTheyMake() {
    List<TrueChange> changes = stroked().changes();
    assertThat(changes).extracting(TrueChange::channel).containsExactly(1, 0, 0, 1);
    assertThat(changes).extracting(TrueChange::closed).containsExactly(false, true, false, true);
    double[] x = changes.stream().mapToDouble(TrueChange::x).toArray();
    assertThat(x).containsExactly(new double[] {2.05, 2.07, 2.0, 1.98}, within(1e-9));
  }

  @Test
  void handwheelReadsTheLostMotionMoreWhileOpening() {
    for (TrueChange change : stroked().changes()) {
      double play = change.speed() > 0 ? 0.25 : 0;
      assertThat(change.handwheel() - change.x()).isCloseTo(play, within(1e-9));
    }
  }

  @Test
  void technicianMissesTheStopByAsMuchAsStated() {
    double sum = 0;
    int n = 400;
    for (int k = 0; k < n; k++) {
      Actuator actuator = new Actuator(twoContacts(), 0.4, new Rng(k));
      HandStyle style = HandStyle.somebody(new Rng(100 + k), 0.01);
      new HandCrank(actuator, style, new Rng(200 + k)).toStop(End.CLOSED, "closed-stop");
      double mark = actuator.marks().get(0).timeS();
      sum += Math.pow(actuator.path().driveAt(mark), 2);
    }
    // chi-square with 400 degrees of freedom, three standard deviations: 0.01 * (1 +- 3/sqrt(800))
    assertThat(Math.sqrt(sum / n)).isBetween(0.0089, 0.0111);
  }

  @Test
  void anAdjusterMovesTheTripPointWhileNothingMoves() {
    Actuator actuator = new Actuator(twoContacts(), 1.9, new Rng(1));
    actuator.rest(1);
    actuator.adjust("c", -0.3, 2);
    assertThat(actuator.changes()).hasSize(2).allMatch(TrueChange::atRest);
    // rise of 23-24 passes x after half of the way (2.05 - 0.15), of 21-22 later (2.07 - 0.17)
    assertThat(actuator.changes().get(0).timeS()).isCloseTo(2.0, within(0.002));
    assertThat(actuator.changes().get(1).timeS()).isCloseTo(2.0 + 2 * 0.02 / 0.3, within(0.002));
  }
}
