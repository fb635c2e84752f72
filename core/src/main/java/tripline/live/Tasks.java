package tripline.live;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import tripline.assess.Assessment;
import tripline.assess.CamJudgement;
import tripline.assess.SettingJudgement;
import tripline.develop.Development;
import tripline.develop.Setting;
import tripline.develop.Stroke;
import tripline.job.JobSheet;
import tripline.live.Task.Kind;
import tripline.live.Task.Progress;
import tripline.measure.Decision;
import tripline.measure.Estimate;
import tripline.reduce.Trace;
import tripline.sample.Mark;

/**
 * Finds how far every trip point has come. What was proved stays proved while other adjusters are
 * turned: a trip point's decision is that of the latest setting in which it was approached, since
 * its own adjuster was last turned.
 */
final class Tasks {
  /**
   * An adjuster is turned with the drive at its trip point: no further from it than this, turns.
   */
  private static final double NEAR_TURNS = 0.3;

  private final Assessment assessment;
  private final Development development;
  private final JobSheet sheet;

  private Tasks(LiveAnswer answer) {
    assessment = answer.assessment();
    development = assessment.development();
    sheet = answer.sheet();
  }

  /** The limits of both ends, then the other trip points in sheet order. */
  static List<Task> of(LiveAnswer answer) {
    Tasks tasks = new Tasks(answer);
    return answer.points().stream().map(tasks::task).toList();
  }

  /** What an approach in one setting told. */
  private record Seen(Estimate early, Decision decision) {}

  private Task task(TripPoint point) {
    Optional<Turned> turned = lastTurned(point);
    Optional<Seen> seen =
        IntStream.rangeClosed(0, development.judged() - turned.map(Turned::setting).orElse(0))
            .mapToObj(back -> assessment.settings().get(development.judged() - back))
            .flatMap(setting -> seen(point, setting).stream())
            .findFirst();
    return new Task(
        point.cam(),
        point.edge().word(),
        point.from(),
        point.kind(),
        point.contact(),
        point.beyond(),
        Optional.empty(),
        point.targetX(),
        point.distanceTurns(),
        point.toleranceTurns(),
        seen.map(Seen::early),
        seen.map(Seen::decision).orElse(Decision.UNDECIDED),
        progress(point, turned, seen),
        furthest(point, turned));
  }

  private Progress progress(TripPoint point, Optional<Turned> turned, Optional<Seen> seen) {
    if (seen.isPresent()) {
      return turned.isPresent() ? Progress.LEFT : Progress.FOUND;
    }
    if (turned.isPresent()) {
      return isStated(turned.get()) ? Progress.ADJUSTED : Progress.TRIPPED;
    }
    return passedOut(point) ? Progress.PASSED : Progress.UNSEEN;
  }

  private Optional<Seen> seen(TripPoint point, SettingJudgement setting) {
    if (point.kind() == Kind.MID_TRAVEL) {
      return cams(point, setting)
          .filter(c -> c.deviation().isPresent())
          .map(c -> new Seen(early(point, c.deviation().orElseThrow()), c.decision()))
          .findFirst();
    }
    Decision decision =
        cams(point, setting)
            .map(CamJudgement::decision)
            .reduce(setting.end(point.from()).backoffDecision(), Decision::and);
    return setting
        .end(point.from())
        .backoff()
        .map(backoff -> new Seen(backoff.plus(-point.distanceTurns()), decision));
  }

  private static Stream<CamJudgement> cams(TripPoint point, SettingJudgement setting) {
    return setting.camsNamed(point.cam()).stream().filter(c -> c.target().edge() == point.edge());
  }

  private static Estimate early(TripPoint point, Estimate deviation) {
    return deviation.times(-point.from().approach().sign());
  }

  private int channel(TripPoint point) {
    return sheet.channels().indexOf(point.contact().channel());
  }

  /** An adjuster was turned. */
  private record Turned(int setting, int recording, double timeS) {
    boolean before(Stroke stroke) {
      return stroke.recording() > recording
          || (stroke.recording() == recording && stroke.endS() > timeS);
    }
  }

  /** A contact of the cam changed at rest, or a setting began with the drive at its trip point. */
  private Optional<Turned> lastTurned(TripPoint point) {
    List<Integer> channels =
        sheet.contacts().stream()
            .filter(c -> c.cam().equals(point.cam()))
            .map(c -> sheet.channels().indexOf(c.channel()))
            .toList();
    Stream<Turned> seen =
        development.trips().stream()
            .filter(t -> t.atRest() && channels.contains(t.channel()))
            .map(t -> new Turned(t.setting(), t.recording(), t.timeS()));
    Stream<Turned> stated =
        development.settings().stream()
            .filter(s -> s.number() > 0 && beganAt(point, s))
            .map(s -> new Turned(s.number(), s.recording(), s.fromS()));
    return Stream.concat(seen, stated)
        .max(Comparator.comparingInt(Turned::recording).thenComparingDouble(Turned::timeS));
  }

  /** Whether the operator said, there and then or later, that he has adjusted something. */
  private boolean isStated(Turned turned) {
    for (int r = turned.recording(); r < development.recordings().size(); r++) {
      Trace trace = development.recordings().get(r).trace();
      double sinceS = r == turned.recording() ? turned.timeS() : 0;
      if (trace.marks().stream()
          .anyMatch(
              m -> m.mark() == Mark.ADJUSTED && (m.timeNs() - trace.firstNs()) * 1e-9 >= sinceS)) {
        return true;
      }
    }
    return false;
  }

  private boolean beganAt(TripPoint point, Setting setting) {
    double near = Math.max(NEAR_TURNS, 2 * point.toleranceTurns());
    return development.strokes().stream()
        .filter(s -> s.setting() < setting.number())
        .reduce((first, second) -> second)
        .flatMap(last -> point.beyondTarget(last.to()).stream().boxed().findFirst())
        .filter(beyond -> Math.abs(beyond) <= near)
        .isPresent();
  }

  private boolean passedOut(TripPoint point) {
    return development.trips(channel(point), development.judged()).stream()
        .anyMatch(t -> t.direction().equals(Optional.of(point.from().approach().other())));
  }

  private double furthest(TripPoint point, Optional<Turned> turned) {
    int since = turned.map(Turned::setting).orElse(development.judged());
    return development.strokes().stream()
        .filter(s -> s.setting() >= since && turned.map(t -> t.before(s)).orElse(true))
        .flatMap(s -> Stream.of(s.from(), s.to()))
        .filter(x -> !Double.isNaN(x))
        .mapToDouble(x -> point.beyondTarget(x).orElse(Double.NEGATIVE_INFINITY))
        .max()
        .orElse(Double.NEGATIVE_INFINITY);
  }
}
