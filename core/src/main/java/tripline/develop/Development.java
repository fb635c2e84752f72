package tripline.develop;

import java.util.List;
import tripline.job.JobSheet;
import tripline.travel.Caveat;
import tripline.travel.Coordinate;
import tripline.travel.RecordingTrace;

/**
 * All that was seen, in travel coordinate x, before anything is judged.
 *
 * @param sheet what was intended
 * @param recordings the reduced recordings, in order
 * @param coordinate stops, span, lost motion (pooled over the recordings: a stop outlives an
 *     adjustment of a cam)
 * @param settings settings in order of time; the last is the one to judge
 * @param strokes strokes of all recordings, in order
 * @param trips settled changes of all recordings, in order, torque and motor channels included
 * @param doubts what could not be done on the way and why (recordings that could not be registered
 *     ...)
 */
public record Development(
    JobSheet sheet,
    List<RecordingTrace> recordings,
    Coordinate coordinate,
    List<Setting> settings,
    List<Stroke> strokes,
    List<Trip> trips,
    List<Caveat> doubts) {

  public Development {
    recordings = List.copyOf(recordings);
    settings = List.copyOf(settings);
    strokes = List.copyOf(strokes);
    trips = List.copyOf(trips);
    doubts = List.copyOf(doubts);
  }

  /** Index of the setting that is judged. */
  public int judged() {
    return settings.size() - 1;
  }

  /** Trips of one contact channel in one setting, at-rest changes left out. */
  public List<Trip> trips(int channel, int setting) {
    return trips.stream()
        .filter(t -> t.channel() == channel && t.setting() == setting && !t.atRest())
        .toList();
  }
}
