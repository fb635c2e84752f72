package tripline.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tripline.job.Direction;
import tripline.job.End;
import tripline.job.SensorSide;
import tripline.live.Step.AdjusterWay;
import tripline.live.Step.Phase;
import tripline.measure.Decision;
import tripline.truth.Rng;

/** Somebody who does nothing but what he is told ends with a valve that is set right. */
class GuideTest {
  private static final double SPAN = Sites.SPAN;

  /** Does as he is told, to within a few degrees. */
  private static final class Obedient {
    final Rig rig;
    final Rng rng;
    final List<Phase> phases = new ArrayList<>();
    final double lostMotion;
    LiveAnswer answer;
    Marks marks = Marks.PRESSED;

    enum Marks {
      PRESSED,
      FORGOTTEN
    }

    Obedient(Rig rig, long seed, double lostMotion) {
      this.rig = rig;
      this.lostMotion = lostMotion;
      rng = new Rng(seed);
      answer = rig.answer();
    }

    /** Follows the guide until it is content, or for so many steps. */
    void follow(int steps) {
      for (int k = 0; k < steps; k++) {
        Step step = next();
        if (phases.isEmpty() || phases.get(phases.size() - 1) != step.phase()) {
          phases.add(step.phase());
        }
        if (step.phase() == Phase.ACCEPTED || step.phase() == Phase.REJECTED) {
          return;
        }
        act(step);
      }
    }

    Step next() {
      answer = rig.answer();
      Now now = rig.live.now();
      return Guide.next(answer, Whereabouts.of(answer, now), now);
    }

    private void act(Step step) {
      switch (step.phase()) {
        case FIND_STOP -> rig.turn(100 * step.end().orElse(End.CLOSED).approach().sign());
        case CONFIRM_STOP -> {
          End end = step.end().orElseThrow();
          if (marks == Marks.PRESSED) {
            rig.mark(end);
          } else {
            rig.turn(-3 * end.approach().sign());
          }
        }
        case TURN_ADJUSTER -> {
          Task task = step.task().orElseThrow();
          AdjusterWay way = step.adjusterWay().orElseThrow();
          rig.adjust(task.cam(), way == AdjusterWay.WITH_TRAVEL, task.from().approach());
        }
        case TRIPPED -> {
          rig.adjusted();
          rig.turn(turns(step, 0));
        }
        case TAKE_UP -> rig.turn(turns(step, 0.3));
        case PROVE_BACK -> rig.turn(turns(step, 0) + 0.25 * sign(step));
        case STROKE -> {
          rig.turn(100);
          rig.turn(-100);
          rig.turn(100);
        }
        default -> rig.turn(turns(step, 0) + 0.004 * rng.gaussian());
      }
    }

    private static int sign(Step step) {
      return step.ahead().orElseThrow().toward().sign();
    }

    /** The handwheel's way: with the sensor on the drive he feels for the lost motion himself. */
    private double turns(Step step, double share) {
      Whereabouts.Ahead ahead = step.ahead().orElseThrow();
      double felt =
          answer.sheet().position().side() == SensorSide.DRIVE && turnsBack(ahead) ? lostMotion : 0;
      double turns = share > 0 ? ahead.handwheelTurns() * share : ahead.handwheelTurns();
      return (turns + felt) * ahead.toward().sign();
    }

    private Direction last = Direction.CLOSING;

    private boolean turnsBack(Whereabouts.Ahead ahead) {
      boolean back = ahead.toward() != last;
      last = ahead.toward();
      return back;
    }
  }

  @ParameterizedTest
  @EnumSource
  void leadsToAValveSetRight(Sites site) {
    Rig rig = Sites.rig(site, 0.85, 2.5, SPAN - 0.2, 71);
    Obedient somebody = new Obedient(rig, 9, site.lostMotionTurns());
    somebody.follow(60);
    assertSetRight(somebody);
    assertThat(somebody.phases).contains(Phase.TRIPPED, Phase.PROVE_BACK).endsWith(Phase.ACCEPTED);
  }

  private static void assertSetRight(Obedient somebody) {
    assertThat(somebody.answer.result().decision())
        .as("%s", somebody.phases)
        .isEqualTo(Decision.ACCEPT);
    Rig rig = somebody.rig;
    assertThat(rig.trips.get("close")).isCloseTo(0.5, within(0.09));
    assertThat(SPAN - rig.trips.get("open") - rig.truth.differentialTurns())
        .isCloseTo(0.5, within(0.09));
  }

  @ParameterizedTest
  @EnumSource
  void leavesAloneWhatIsRight(Sites site) {
    Rig rig = Sites.rig(site, 0.5, 2.5, SPAN - 0.53, 72);
    List<Double> before = rig.turned();
    Obedient somebody = new Obedient(rig, 10, site.lostMotionTurns());
    somebody.follow(60);
    assertSetRight(somebody);
    assertThat(rig.turned()).isEqualTo(before);
  }

  /** The steps in the order they are commonly done in, where the lost motion is known. */
  @Test
  void goesThroughTheUsualSteps() {
    Rig rig = Sites.rig(Sites.TIGHT, 0.2, 2.5, SPAN - 0.53, 73);
    Obedient somebody = new Obedient(rig, 11, 0);
    somebody.follow(60);
    assertThat(somebody.phases)
        .startsWith(
            Phase.FIND_STOP,
            Phase.CONFIRM_STOP,
            Phase.TAKE_UP,
            Phase.BACK_OFF,
            Phase.TURN_ADJUSTER,
            Phase.TRIPPED,
            Phase.PROVE_BACK,
            Phase.FIND_STOP,
            Phase.CONFIRM_STOP);
    assertSetRight(somebody);
  }

  /** He is back at the handwheel sooner than a coarse encoder shows that he stands. */
  @ParameterizedTest
  @EnumSource
  void hasTimeForWhoeverIsQuick(Sites site) {
    Rig rig = Sites.rig(site, 0.85, 2.5, SPAN - 0.2, 77);
    rig.patienceS = 0.3;
    Obedient somebody = new Obedient(rig, 15, site.lostMotionTurns());
    somebody.follow(60);
    assertSetRight(somebody);
    assertThat(somebody.answer.result().settings()).hasSize(3);
  }

  /** Set from the side of the stop it would come out wrong by its differential every time. */
  @Test
  void setsACamOfLargeDifferentialOnTheApproach() {
    Sites site = Sites.FINE;
    Rig.Truth wide = new Rig.Truth(SPAN, 0.28, 0.16, 0.0005);
    Rig rig = new Rig(Sites.sheet(site, 0.2), wide, 2, 74, Sites.trips(0.5, 2.5, SPAN - 0.25));
    Obedient somebody = new Obedient(rig, 12, 0);
    somebody.follow(60);
    assertSetRight(somebody);
  }

  @Test
  void setsACamInMidTravelToo() {
    Rig rig = Sites.rig(Sites.FINE, 0.5, 3.1, SPAN - 0.53, 75);
    Obedient somebody = new Obedient(rig, 13, 0);
    somebody.follow(60);
    assertSetRight(somebody);
    assertThat(rig.trips.get("quarter")).isCloseTo(SPAN / 4, within(0.1));
  }

  /** Nobody presses the marks: the stops are known from where the handwheel stalls. */
  @Test
  void doesWithoutMarksWhereTheLimitsShowTheStops() {
    Rig rig = Sites.rig(Sites.FINE, 0.85, 2.5, SPAN - 0.9, 76);
    Obedient somebody = new Obedient(rig, 14, 0);
    somebody.marks = Obedient.Marks.FORGOTTEN;
    somebody.follow(80);
    assertSetRight(somebody);
  }

  @Test
  void asksForAPositionWhereThereIsNone() {
    LiveReduction live = new LiveReduction(Rig.settings(Sites.sheet(Sites.FINE)));
    live.onRow(1, Double.NaN, 15, 3);
    LiveAnswer answer = Rig.answer(Sites.sheet(Sites.FINE), live, live.spare());
    assertThat(Whereabouts.of(answer, live.now())).isEmpty();
    assertThat(Guide.next(answer, Optional.empty(), live.now()).phase())
        .isEqualTo(Phase.NO_POSITION);
  }
}
