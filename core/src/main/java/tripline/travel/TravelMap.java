package tripline.travel;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tripline.job.Direction;
import tripline.job.End;
import tripline.measure.Estimate;
import tripline.measure.Part;
import tripline.measure.Shape;

/**
 * Turns readings of any recording into the travel coordinate x, handwheel turns.
 *
 * <p>With the sensor on the handwheel side x is the play operator of the reading: while closing
 * {@code x = h - H0}, while opening {@code x = h - H0 - L}, between the two after a turn back. The
 * lost motion L is the measured bound, so while opening the smallest differential of the cams
 * counts as lost motion. With the sensor on the drive side {@code x = h - H0} both ways.
 */
public final class TravelMap {
  private final Survey survey;
  private final Coordinate coordinate;
  private final List<Optional<Estimate>> offsets;
  private final Estimate closingZero;
  private final Estimate openingZero;
  private final double datumX;
  private final List<Caveat> caveats;

  TravelMap(
      Survey survey,
      Coordinate coordinate,
      List<Optional<Estimate>> offsets,
      Estimate closingZero,
      Estimate openingZero,
      double datumX,
      List<Caveat> caveats) {
    this.survey = survey;
    this.coordinate = coordinate;
    this.offsets = List.copyOf(offsets);
    this.closingZero = closingZero;
    this.openingZero = openingZero;
    this.datumX = datumX;
    this.caveats = List.copyOf(caveats);
  }

  /** Stops, span, lost motion. */
  public Coordinate coordinate() {
    return coordinate;
  }

  /** What could not be done, and why. */
  public List<Caveat> caveats() {
    return caveats;
  }

  /** Whether a recording's position zero is known against the others'. */
  public boolean isPlaced(int recording) {
    return offset(recording).isPresent();
  }

  /** What the readings of a recording want added to be unwrapped against the one before it. */
  public double shift(int recording) {
    return survey.shift(recording);
  }

  /** x of a hard stop: exactly 0 where x counts from it. */
  public Optional<Estimate> stop(End end) {
    return coordinate
        .stop(end)
        .map(s -> scaled(survey.turns(s.reading()).minus(zero(end.approach()))));
  }

  private Estimate zero(Direction direction) {
    return direction == Direction.OPENING ? openingZero : closingZero;
  }

  /**
   * x of a reading met while travelling one way, play taken up.
   *
   * @param recording recording index
   * @param reading reading units, unwrapped
   * @param direction direction of travel
   * @return turns, with the parts of stop, lost motion, registration and scale as common ones;
   *     empty where the recording could not be placed
   */
  public Optional<Estimate> x(int recording, Estimate reading, Direction direction) {
    return offset(recording)
        .map(offset -> scaled(survey.turns(reading).plus(offset).minus(zero(direction))));
  }

  /** As {@link #x(int, Estimate, Direction)} without uncertainty. */
  public OptionalDouble x(int recording, double reading, Direction direction) {
    if (!Double.isFinite(reading)) {
      return OptionalDouble.empty();
    }
    return x(recording, Estimate.exact(reading), direction)
        .map(x -> OptionalDouble.of(x.value()))
        .orElse(OptionalDouble.empty());
  }

  /** The error of turns per unit grows with the distance from where x counts from. */
  private Estimate scaled(Estimate x) {
    double scaleU = (x.value() - datumX) * survey.sheet().position().scaleU();
    return x.with(Part.common(PartNames.SCALE, scaleU, Shape.NORMAL));
  }

  private Optional<Estimate> offset(int recording) {
    return offsets.get(survey.frames().frame(recording));
  }
}
