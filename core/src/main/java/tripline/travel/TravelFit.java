package tripline.travel;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import tripline.job.Direction;
import tripline.job.End;
import tripline.job.JobSheet;
import tripline.measure.Estimate;
import tripline.measure.Part;
import tripline.measure.Shape;

/** Finds zero, stops, span and lost motion of what a {@link Survey} saw. */
public final class TravelFit {
  private final Survey survey;
  private final JobSheet sheet;
  private final List<Caveat> caveats = new ArrayList<>();
  private final Placement placement;
  private final Map<End, HardStop> stops;
  private final Optional<Estimate> lostMotion;
  private final Estimate play;

  private TravelFit(Survey survey, Optional<Reference> reference) {
    this.survey = survey;
    sheet = survey.sheet();
    List<Landmark> landmarks = Landmarks.of(survey);
    placement = new Placement(survey, landmarks, caveats);
    stops = new EnumMap<>(placement.stops());
    if (reference.isPresent() && stops.size() < End.values().length) {
      new ReferenceStops(survey, reference.get(), caveats)
          .in(placement.ground(), landmarks)
          .forEach(stops::putIfAbsent);
    }
    lostMotion = least(LostMotion.measured(survey, landmarks), referred(reference));
    play = LostMotion.play(sheet, lostMotion);
    dropReversed();
  }

  /** An open stop that does not lie beyond the closed one: neither can be believed. */
  private void dropReversed() {
    HardStop closed = stops.get(End.CLOSED);
    HardStop open = stops.get(End.OPEN);
    if (closed == null || open == null) {
      return;
    }
    double span = span(closed, open).value();
    if (span <= 0) {
      caveats.add(
          new Caveat(
              Caveat.Kind.ENDS_EXCHANGED,
              survey.frames().firstRecording(placement.ground()),
              String.format(
                  Locale.ROOT,
                  "The open stop lies %.2f turns on the closed side of the closed stop, neither was"
                      + " used.",
                  -span)));
      stops.clear();
    }
  }

  private Estimate span(HardStop closed, HardStop open) {
    return survey.turns(open.reading()).minus(survey.turns(closed.reading())).minus(play);
  }

  /**
   * Fits the travel coordinate.
   *
   * @param survey at least one recording
   * @param reference hard stops from an earlier result, used for ends the recordings did not touch
   */
  public static TravelMap of(Survey survey, Optional<Reference> reference) {
    return new TravelFit(survey, reference).map();
  }

  /** A reference whose stops are in use was at work on the same lost motion. */
  private Optional<Estimate> referred(Optional<Reference> reference) {
    boolean inUse = stops.values().stream().anyMatch(s -> s.source() == HardStop.Source.REFERENCE);
    return inUse ? reference.flatMap(Reference::lostMotion) : Optional.empty();
  }

  /** Both bound it from above. */
  private static Optional<Estimate> least(Optional<Estimate> a, Optional<Estimate> b) {
    return Stream.concat(a.stream(), b.stream())
        .min((p, q) -> Double.compare(p.value(), q.value()));
  }

  private TravelMap map() {
    Optional<HardStop> closed = Optional.ofNullable(stops.get(End.CLOSED));
    Optional<HardStop> open = Optional.ofNullable(stops.get(End.OPEN));
    if (closed.isPresent()) {
      Estimate zero = survey.turns(closed.get().reading());
      Optional<Estimate> span = open.map(o -> span(closed.get(), o));
      return map(Datum.CLOSED_STOP, span.map(this::scaled), zero, zero.plus(play), 0);
    }
    if (open.isPresent()) {
      double span = sheet.travel().spanTurns().orElse(0);
      Estimate openingZero = survey.turns(open.get().reading()).plus(-span);
      return map(Datum.OPEN_STOP, Optional.empty(), openingZero.minus(play), openingZero, span);
    }
    Estimate first = survey.turns(Estimate.exact(firstReading()));
    boolean opens = firstDirection() == Direction.OPENING;
    return map(
        Datum.FIRST_READING,
        Optional.empty(),
        opens ? first.minus(play) : first,
        opens ? first : first.plus(play),
        0);
  }

  private TravelMap map(
      Datum datum,
      Optional<Estimate> span,
      Estimate closingZero,
      Estimate openingZero,
      double datumX) {
    Coordinate coordinate =
        new Coordinate(
            datum,
            Optional.ofNullable(stops.get(End.CLOSED)),
            Optional.ofNullable(stops.get(End.OPEN)),
            span,
            lostMotion);
    List<Optional<Estimate>> offsets = new ArrayList<>();
    for (int f = 0; f < survey.frames().count(); f++) {
      offsets.add(placement.offset(f));
    }
    return new TravelMap(survey, coordinate, offsets, closingZero, openingZero, datumX, caveats);
  }

  private Estimate scaled(Estimate span) {
    double scaleU = span.value() * sheet.position().scaleU();
    return span.with(Part.common(PartNames.SCALE, scaleU, Shape.NORMAL));
  }

  private double firstReading() {
    int recording = survey.frames().firstRecording(placement.ground());
    double first = ZeroFrames.firstReading(survey.recordings().get(recording).trace());
    return Double.isNaN(first) ? 0 : first;
  }

  private Direction firstDirection() {
    return survey.legs().stream()
        .filter(leg -> survey.frames().frame(leg.recording()) == placement.ground())
        .map(Leg::direction)
        .findFirst()
        .orElse(Direction.OPENING);
  }
}
