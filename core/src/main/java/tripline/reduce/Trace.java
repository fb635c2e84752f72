package tripline.reduce;

import java.util.List;
import tripline.sample.Channels;

/**
 * What happened in one recording: moves, rests, settled changes, marks, losses. Readings are
 * unwrapped and in units of the position channel, times in ns of the recording's clock.
 *
 * @param channels the contact channels
 * @param firstNs first stamp (row, edge, mark or loss), ns
 * @param lastNs last stamp, ns
 * @param rows rows taken
 * @param positions position readings taken
 * @param noise standard deviation of the white noise of a reading, estimated; 0 where quantisation
 *     hides it
 * @param quantum one count of the position channel as stated or estimated; 0 where none shows
 * @param scanNs the logger's scan period (smallest usual distance between rows), ns
 * @param movements moves and rests in order of time, without overlap
 * @param changes settled contact changes, in order of their first edge
 * @param disturbances bursts that ended in the state they began in
 * @param marks operator's marks
 * @param losses stretches with samples missing, as the reader reported them or as the rhythm of the
 *     rows shows them
 * @param faults what else is wrong with the readings, in order of time
 * @param start contact states first seen
 * @param end contact states at the end, as settled: {@code start} with the changes made
 * @param outline the path of the readings, thinned for drawing
 */
public record Trace(
    Channels channels,
    long firstNs,
    long lastNs,
    long rows,
    long positions,
    double noise,
    double quantum,
    long scanNs,
    List<Movement> movements,
    List<Change> changes,
    List<Disturbance> disturbances,
    List<MarkPoint> marks,
    List<Loss> losses,
    List<ReadingFault> faults,
    States start,
    States end,
    Outline outline) {

  public Trace {
    movements = List.copyOf(movements);
    changes = List.copyOf(changes);
    disturbances = List.copyOf(disturbances);
    marks = List.copyOf(marks);
    losses = List.copyOf(losses);
    faults = List.copyOf(faults);
  }

  /**
   * Contact states as bit masks.
   *
   * @param known channels that have been read
   * @param closed those that were closed
   */
  public record States(long known, long closed) {}
}
