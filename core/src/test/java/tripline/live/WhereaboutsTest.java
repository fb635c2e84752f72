package tripline.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tripline.job.Direction;
import tripline.job.End;
import tripline.live.ContactNow.Charted;
import tripline.live.Whereabouts.Ahead;
import tripline.live.Whereabouts.Slack;
import tripline.sample.ContactState;

/** Where the drive stands and what the handwheel has to turn, against the rig that knows. */
class WhereaboutsTest {
  private static final double LOST = 0.28;

  /** Closed stop, open stop and back to the middle: everything is known. */
  private static Rig known(Sites site) {
    Rig rig = Sites.rig(site, 0.5, 2.5, Sites.SPAN - 0.53, 81);
    rig.turn(-100);
    rig.mark(End.CLOSED);
    rig.turn(100);
    rig.mark(End.OPEN);
    rig.turn(-4);
    return rig;
  }

  private static Whereabouts where(Rig rig) {
    return Whereabouts.of(rig.answer(), rig.live.now()).orElseThrow();
  }

  @ParameterizedTest
  @EnumSource
  void followsTheDrive(Sites site) {
    Rig rig = known(site);
    double near = Math.max(0.02, 0.6 * rig.countTurns()) + 0.03;
    assertThat(where(rig).x()).isCloseTo(rig.drive(), within(near));
    for (double turns : new double[] {0.1, -0.05, 0.7, -0.2, -0.6, 1.3}) {
      rig.turn(turns);
      assertThat(where(rig).x()).as("after %s", turns).isCloseTo(rig.drive(), within(near));
    }
  }

  /** Turning the handwheel by what it says brings the drive there, lost motion and all. */
  @ParameterizedTest
  @EnumSource(names = {"FINE", "FALLING", "NOISY", "TIGHT"})
  void theHandwheelTurnsItStatesBringTheDriveThere(Sites site) {
    Rig rig = known(site);
    for (double target : new double[] {3, 6, 5.9, 6.2, 4, 4.5}) {
      Ahead ahead = where(rig).to(target);
      rig.turn(ahead.handwheelTurns() * ahead.toward().sign());
      assertThat(rig.drive()).as("to %s", target).isCloseTo(target, within(0.05));
    }
    assertThat(where(rig).to(where(rig).x() + 0.25).handwheelDegrees())
        .isCloseTo(90 + 360 * where(rig).slack(Direction.OPENING), within(1e-6));
  }

  @Test
  void countsLostMotionOnBothSides() {
    Rig rig = known(Sites.FINE);
    Whereabouts closing = where(rig);
    assertThat(closing.side()).contains(Direction.CLOSING);
    assertThat(closing.slack(Direction.CLOSING)).isCloseTo(0, within(0.003));
    // The smallest differential of the cams counts as lost motion.
    assertThat(closing.slack(Direction.OPENING)).isCloseTo(LOST + 0.03, within(0.01));
    rig.turn(0.1);
    Whereabouts between = where(rig);
    assertThat(between.x()).isCloseTo(closing.x(), within(0.003));
    assertThat(between.slack(Direction.CLOSING)).isCloseTo(0.1, within(0.003));
    assertThat(between.slack(Direction.OPENING)).isCloseTo(LOST - 0.07, within(0.01));
    assertThat(between.slack()).isEqualTo(Slack.COUNTED);
    assertThat(between.moving()).isEmpty();
  }

  @Test
  void aSensorOnTheDriveDoesNotSeeLostMotion() {
    Rig rig = known(Sites.STEM);
    assertThat(where(rig).slack()).isEqualTo(Slack.UNSEEN);
    assertThat(where(rig).slack(Direction.OPENING)).isZero();
  }

  @Test
  void saysWhichWayItMoves() {
    Rig rig = known(Sites.FALLING);
    rig.turnWithoutStopping(0.8);
    assertThat(where(rig).moving()).contains(Direction.OPENING);
    rig.turnWithoutStopping(-0.8);
    assertThat(where(rig).moving()).contains(Direction.CLOSING);
    rig.rest(1);
    assertThat(where(rig).moving()).isEmpty();
  }

  @Test
  void contactsStandBesideTheirChart() {
    Rig rig = known(Sites.FINE);
    assertThat(ContactNow.all(rig.answer(), Optional.of(where(rig)), rig.live.now()))
        .extracting(c -> c.contact().name(), ContactNow::charted, c -> c.state().orElseThrow())
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple("11-12", Charted.CLOSED, ContactState.CLOSED),
            org.assertj.core.groups.Tuple.tuple("23-24", Charted.OPEN, ContactState.OPEN),
            org.assertj.core.groups.Tuple.tuple("33-34", Charted.CLOSED, ContactState.CLOSED),
            org.assertj.core.groups.Tuple.tuple("41-42", Charted.CLOSED, ContactState.CLOSED));
    rig.turn(-100);
    rig.turn(0.5 + LOST);
    assertThat(ContactNow.all(rig.answer(), Optional.of(where(rig)), rig.live.now()))
        .filteredOn(c -> c.contact().cam().equals("close"))
        .extracting(ContactNow::charted)
        .containsOnly(Charted.CHANGES);
    assertThat(ContactNow.all(rig.answer(), Optional.empty(), rig.live.now()))
        .noneMatch(ContactNow::isAgainstChart)
        .extracting(ContactNow::charted)
        .containsOnly(Charted.UNKNOWN);
  }

  @Test
  void aContactAgainstItsChartIsSaidToBe() {
    Rig rig = Sites.rig(Sites.FINE, 1.4, 2.5, Sites.SPAN - 0.53, 82);
    rig.turn(-100);
    rig.mark(End.CLOSED);
    rig.turn(1 + LOST);
    assertThat(ContactNow.all(rig.answer(), Optional.of(where(rig)), rig.live.now()))
        .filteredOn(ContactNow::isAgainstChart)
        .extracting(c -> c.contact().name())
        .containsExactly("11-12", "23-24");
  }

  @Test
  void targetsLieAheadOnceTheirStopIsKnown() {
    Rig rig = Sites.rig(Sites.FINE, 0.5, 2.5, Sites.SPAN - 0.53, 83);
    LiveAnswer nothing = rig.answer();
    assertThat(TargetNow.all(nothing, Whereabouts.of(nothing, rig.live.now())))
        .extracting(TargetNow::cam, t -> t.ahead().isPresent())
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple("close", false),
            org.assertj.core.groups.Tuple.tuple("open", false),
            org.assertj.core.groups.Tuple.tuple("quarter", false));
    rig.turn(-100);
    rig.mark(End.CLOSED);
    LiveAnswer closed = rig.answer();
    TargetNow close = TargetNow.all(closed, Whereabouts.of(closed, rig.live.now())).get(0);
    assertThat(close.ahead().orElseThrow().travelTurns()).isCloseTo(0.5, within(0.01));
    assertThat(close.ahead().orElseThrow().toward()).isEqualTo(Direction.OPENING);
  }
}
