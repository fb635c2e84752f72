package tripline.live;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import tripline.job.End;
import tripline.live.Step.Phase;
import tripline.live.Task.Kind;
import tripline.live.Whereabouts.Ahead;
import tripline.measure.Decision;
import tripline.result.Result;

/**
 * Leads through the setting of both ends, as it is commonly done by hand: touch the stop, take up
 * the lost motion, back off, turn the adjuster until the contact changes, prove it by approaching
 * the point again from the far side. Holds no state of its own: the step follows from what has been
 * seen, so that whoever does things in another order is met where he is.
 */
public final class Guide {
  /** A stop was not reached by less travel one way than this, turns. */
  private static final double LEAST_WAY_TURNS = 0.25;

  /** Standing within this of the furthest reading may be standing on the stop, turns. */
  private static final double FURTHEST_TURNS = 0.03;

  /** A stop is looked for this near to where the sheet has it: turns, and share of the span. */
  private static final double NEAR_TURNS = 1;

  private static final double NEAR_SHARE = 0.15;

  private final LiveAnswer answer;
  private final Now now;
  private final Whereabouts where;
  private final List<Task> tasks;

  private Guide(LiveAnswer answer, Now now, Whereabouts where) {
    this.answer = answer;
    this.now = now;
    this.where = where;
    tasks = answer.tasks();
  }

  /** The next step. */
  public static Step next(LiveAnswer answer, Optional<Whereabouts> where, Now now) {
    return where.isEmpty()
        ? Step.of(Phase.NO_POSITION)
        : new Guide(answer, now, where.get()).next();
  }

  private Step next() {
    // Nobody has said yet that this is the stop, and a pause just before it looks like it.
    Optional<End> inferred =
        Stream.of(End.values()).filter(e -> answer.isInferred(e) && standsFurthest(e)).findFirst();
    if (inferred.isPresent()) {
      return Step.of(Phase.CONFIRM_STOP, inferred);
    }
    Optional<Task> pending =
        tasks.stream()
            .filter(t -> t.progress().isTurned() && t.targetX().isPresent())
            .min(Comparator.comparingDouble(this::distance));
    if (pending.isPresent()) {
      return step(pending.get());
    }
    Optional<Task> end =
        tasks.stream()
            .filter(t -> t.kind() == Kind.END && !t.isRight() && t.targetX().isPresent())
            .min(Comparator.comparingDouble(this::distance));
    if (end.isPresent()) {
      return step(end.get());
    }
    Optional<Step> stop = stopToFind();
    if (stop.isPresent()) {
      return stop.get();
    }
    return tasks.stream()
        .filter(t -> t.decision() == Decision.REJECT && t.targetX().isPresent())
        .min(Comparator.comparingDouble(this::distance))
        .map(this::step)
        .orElseGet(this::whole);
  }

  private double distance(Task task) {
    return Math.abs(task.targetX().orElse(Double.MAX_VALUE) - where.x());
  }

  private Step step(Task task) {
    Approach approach =
        new Approach(
            task.with(answer.state(task.contact(), now)),
            where,
            now.motion(),
            answer.confirmedStop(task.from()).map(stop -> where.from(stop, task.from())));
    return approach.step();
  }

  /** A stop that was not touched yet. */
  private Optional<Step> stopToFind() {
    List<End> unknown =
        Stream.of(End.values()).filter(e -> answer.confirmedStop(e).isEmpty()).toList();
    if (unknown.isEmpty()) {
      return Optional.empty();
    }
    Optional<End> reached =
        unknown.stream().filter(e -> standsFurthest(e) && isNearExpected(e)).findFirst();
    if (reached.isPresent()) {
      return Optional.of(Step.of(Phase.CONFIRM_STOP, reached));
    }
    return Optional.of(
        unknown.size() == 1
            ? findStop(unknown.get(0))
            : Step.of(Phase.FIND_STOP, Optional.empty()));
  }

  /** With about how far to go, where the other stop and the sheet's span tell. */
  private Step findStop(End end) {
    Optional<Ahead> ahead =
        answer
            .confirmedStop(end.other())
            .flatMap(
                other ->
                    answer.sheet().travel().spanTurns().stream()
                        .mapToObj(span -> where.to(other.value() + span * end.approach().sign()))
                        .findFirst())
            .filter(a -> a.toward() == end.approach());
    return new Step(Phase.FIND_STOP, Optional.of(end), Optional.empty(), ahead, List.of());
  }

  /** Where the other stop and the sheet's span tell about where this one is: it stands there. */
  private boolean isNearExpected(End end) {
    OptionalDouble span = answer.sheet().travel().spanTurns();
    Optional<Double> travelled =
        answer.confirmedStop(end.other()).map(stop -> where.from(stop, end.other()));
    if (span.isEmpty() || travelled.isEmpty()) {
      return true;
    }
    double near = Math.max(NEAR_TURNS, NEAR_SHARE * span.getAsDouble());
    return Math.abs(travelled.get() - span.getAsDouble()) <= near;
  }

  private boolean standsFurthest(End end) {
    double perUnit = answer.sheet().position().turnsPerUnit();
    double outward = end.approach().sign() * perUnit;
    double furthest = outward > 0 ? now.turns().highest() : now.turns().lowest();
    boolean came = where.sinceTurnTurns() * end.approach().sign() >= LEAST_WAY_TURNS;
    return now.motion() == Now.Motion.STANDING
        && came
        && Math.abs(now.reading() - furthest) * Math.abs(perUnit) <= FURTHEST_TURNS;
  }

  private Step whole() {
    Result result = answer.result();
    return switch (result.decision()) {
      case ACCEPT -> Step.of(Phase.ACCEPTED);
      case REJECT -> Step.of(Phase.REJECTED);
      case UNDECIDED ->
          new Step(
              Phase.STROKE, Optional.empty(), Optional.empty(), Optional.empty(), unseen(result));
    };
  }

  private static List<String> unseen(Result result) {
    Set<String> names = new TreeSet<>();
    result.cams().stream()
        .filter(c -> c.decision() == Decision.UNDECIDED)
        .forEach(c -> names.add("cam " + c.cam()));
    result.contacts().stream()
        .filter(c -> c.decision() == Decision.UNDECIDED)
        .forEach(c -> names.add(c.contact()));
    return List.copyOf(names);
  }
}
