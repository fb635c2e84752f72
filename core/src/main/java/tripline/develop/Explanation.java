package tripline.develop;

import java.util.List;
import java.util.Optional;
import tripline.job.JobSheet;
import tripline.travel.RecordingTrace;
import tripline.travel.Reference;
import tripline.travel.Survey;
import tripline.travel.TravelFit;
import tripline.travel.TravelMap;

/** Turns reduced recordings into the as-built development. */
public final class Explanation {
  private Explanation() {}

  /**
   * Develops recordings of one actuator.
   *
   * @param recordings in order of time, at least one
   * @param sheet what was intended
   * @param reference hard stops from an earlier result, for ends these recordings did not touch
   * @throws IllegalArgumentException if there is no recording
   */
  public static Development of(
      List<RecordingTrace> recordings, JobSheet sheet, Optional<Reference> reference) {
    return explained(recordings, sheet, reference).development();
  }

  /** As {@link #of}, with the map it rests on. */
  public static Explained explained(
      List<RecordingTrace> recordings, JobSheet sheet, Optional<Reference> reference) {
    if (recordings.isEmpty()) {
      throw new IllegalArgumentException("no recording to develop");
    }
    Survey survey = Survey.of(recordings, sheet);
    TravelMap map = TravelFit.of(survey, reference);
    List<Stroke> strokes = Strokes.of(survey, map);
    return new Explained(
        map,
        new Development(
            sheet,
            recordings,
            map.coordinate(),
            Settings.of(survey),
            strokes,
            Trips.of(survey, map, strokes),
            map.caveats()));
  }
}
