package tripline.link;

import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

/**
 * Edges and marks that wait for the rows before them, in the order of time. Fixed size; whoever
 * fills it up is to send the first one on.
 */
final class Waiting {
  static final int ROOM = 1024;
  private static final int MARK = -1;

  private final long[] timesNs = new long[ROOM];
  private final long[] resolutionsNs = new long[ROOM];
  private final int[] channels = new int[ROOM];
  private final ContactState[] states = new ContactState[ROOM];
  private final Mark[] marks = new Mark[ROOM];
  private final String[] texts = new String[ROOM];
  private int first;
  private int size;
  private long late;

  boolean full() {
    return size == ROOM;
  }

  boolean empty() {
    return size == 0;
  }

  /** Time of the first one, ns. */
  long firstNs() {
    return timesNs[first];
  }

  /** Edges and marks that came after later rows. */
  long late() {
    return late;
  }

  void edge(long timeNs, long resolutionNs, int channel, ContactState state) {
    int at = insert(timeNs);
    resolutionsNs[at] = resolutionNs;
    channels[at] = channel;
    states[at] = state;
  }

  void mark(long timeNs, Mark mark, String text) {
    int at = insert(timeNs);
    channels[at] = MARK;
    marks[at] = mark;
    texts[at] = text;
  }

  /** Makes room behind the last one that is not later. */
  private int insert(long timeNs) {
    int place = size++;
    while (place > 0 && timesNs[at(place - 1)] > timeNs) {
      move(at(place - 1), at(place));
      place--;
    }
    timesNs[at(place)] = timeNs;
    return at(place);
  }

  private int at(int place) {
    return (first + place) & (ROOM - 1);
  }

  private void move(int from, int to) {
    timesNs[to] = timesNs[from];
    resolutionsNs[to] = resolutionsNs[from];
    channels[to] = channels[from];
    states[to] = states[from];
    marks[to] = marks[from];
    texts[to] = texts[from];
  }

  /**
   * Hands the first one on. Where that would step back, an edge is given the present time and the
   * whole stretch since its own interval began as resolution: wider, but true.
   *
   * @return the time it was given, ns
   */
  long sendFirst(SampleSink sink, long notBeforeNs) {
    int at = first;
    first = at(1);
    size--;
    late += notBeforeNs > timesNs[at] ? 1 : 0;
    return send(at, sink, notBeforeNs);
  }

  /** Hands all of them on as {@link #sendFirst} would, and keeps them. */
  void copyTo(SampleSink sink, long notBeforeNs) {
    long timeNs = notBeforeNs;
    for (int place = 0; place < size; place++) {
      timeNs = send(at(place), sink, timeNs);
    }
  }

  private long send(int at, SampleSink sink, long notBeforeNs) {
    long timeNs = Math.max(timesNs[at], notBeforeNs);
    if (channels[at] == MARK) {
      sink.onMark(timeNs, marks[at], texts[at]);
    } else {
      long resolutionNs = timeNs - timesNs[at] + resolutionsNs[at];
      sink.onEdge(timeNs, resolutionNs, channels[at], states[at]);
    }
    return timeNs;
  }
}
