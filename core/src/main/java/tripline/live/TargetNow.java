package tripline.live;

import java.util.List;
import java.util.Optional;
import tripline.job.End;

/**
 * A trip point's target, as far as it lies ahead.
 *
 * @param cam cam name
 * @param edge "lower" or "upper" of a closed window
 * @param from the end it is measured from
 * @param kind whether it is the limit of that end
 * @param distanceTurns its distance from that end's stop, turns
 * @param ahead how far it lies from where the drive stands; empty where either is not known
 */
public record TargetNow(
    String cam,
    Optional<String> edge,
    End from,
    Task.Kind kind,
    double distanceTurns,
    Optional<Whereabouts.Ahead> ahead) {

  /** The limits of both ends, then the other trip points in sheet order. */
  public static List<TargetNow> all(LiveAnswer answer, Optional<Whereabouts> where) {
    return answer.points().stream()
        .map(
            point ->
                new TargetNow(
                    point.cam(),
                    point.edge().word(),
                    point.from(),
                    point.kind(),
                    point.distanceTurns(),
                    where.flatMap(w -> point.targetX().stream().mapToObj(w::to).findFirst())))
        .toList();
  }
}
