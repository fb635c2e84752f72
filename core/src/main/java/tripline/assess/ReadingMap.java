package tripline.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import tripline.develop.Development;
import tripline.job.Direction;
import tripline.job.SensorSide;
import tripline.measure.Estimate;
import tripline.reduce.Outline;
import tripline.result.Result.PathPoint;

/**
 * Readings of one recording as x, to place what has no figure of its own: a disturbance, a point of
 * a drawing. Read off the recording's trips, which have both; where one direction was never
 * exercised it lies the lost motion away from the other, or on it where that is not known.
 */
public final class ReadingMap {
  private final double turnsPerUnit;
  private final OptionalDouble opening;
  private final OptionalDouble closing;

  private ReadingMap(double turnsPerUnit, OptionalDouble opening, OptionalDouble closing) {
    this.turnsPerUnit = turnsPerUnit;
    this.opening = opening;
    this.closing = closing;
  }

  /** The map of one recording. */
  public static ReadingMap of(Development development, int recording) {
    double scale = development.sheet().position().turnsPerUnit();
    OptionalDouble stop =
        development.coordinate().closedStop().isPresent()
            ? OptionalDouble.of(
                -scale * development.coordinate().closedStop().orElseThrow().reading().value())
            : OptionalDouble.empty();
    OptionalDouble up = offset(development, recording, Direction.OPENING, scale);
    OptionalDouble down = offset(development, recording, Direction.CLOSING, scale);
    double play = play(development);
    OptionalDouble closing = down.isPresent() ? down : up.isPresent() ? plus(up, play) : stop;
    OptionalDouble opening = up.isPresent() ? up : plus(closing, -play);
    return new ReadingMap(scale, opening, closing);
  }

  private static OptionalDouble plus(OptionalDouble offset, double turns) {
    return offset.isPresent() ? OptionalDouble.of(offset.getAsDouble() + turns) : offset;
  }

  /** By how much a sensor on the handwheel side reads more while opening, turns. */
  private static double play(Development development) {
    return development.sheet().position().side() == SensorSide.HANDWHEEL
        ? development.coordinate().lostMotion().map(Estimate::value).orElse(0.0)
        : 0;
  }

  private static OptionalDouble offset(
      Development development, int recording, Direction direction, double scale) {
    double[] offsets =
        development.trips().stream()
            .filter(t -> t.recording() == recording && !t.atRest())
            .filter(t -> t.direction().orElse(null) == direction)
            .filter(t -> t.x().isPresent() && t.reading().isPresent())
            .mapToDouble(
                t -> t.x().orElseThrow().value() - scale * t.reading().orElseThrow().value())
            .sorted()
            .toArray();
    return offsets.length == 0
        ? OptionalDouble.empty()
        : OptionalDouble.of(offsets[offsets.length / 2]);
  }

  /** x of a reading taken while travelling one way, turns; empty where nothing ties the two. */
  public OptionalDouble x(double reading, Direction direction) {
    OptionalDouble offset = direction == Direction.OPENING ? opening : closing;
    return offset.isPresent() && !Double.isNaN(reading)
        ? OptionalDouble.of(offset.getAsDouble() + turnsPerUnit * reading)
        : OptionalDouble.empty();
  }

  /** A path of readings as travel: the play operator between the two directions' offsets. */
  public List<PathPoint> path(Outline outline, long firstNs) {
    if (opening.isEmpty() || closing.isEmpty()) {
      return List.of();
    }
    double low = Math.min(opening.getAsDouble(), closing.getAsDouble());
    double high = Math.max(opening.getAsDouble(), closing.getAsDouble());
    List<PathPoint> points = new ArrayList<>();
    double x = Double.NaN;
    for (Outline.Point point : outline.points()) {
      double turns = turnsPerUnit * point.reading();
      x = Double.isNaN(x) ? turns + high : Math.max(turns + low, Math.min(turns + high, x));
      points.add(new PathPoint((point.timeNs() - firstNs) * 1e-9, x));
    }
    return points;
  }
}
