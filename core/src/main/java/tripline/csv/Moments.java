package tripline.csv;

import tripline.sample.Mark;
import tripline.sample.SampleSink;

/** Hands rows on in the order of time: watches for stamps that repeat or step back. */
final class Moments {
  /** A file whose time column is no time must not become thousands of recordings. */
  static final int MOST_STEPS_BACK = 50;

  private final CsvEvents events;
  private SampleSink sink;
  private boolean any;
  private long lastNs;
  private long readKnown;
  private boolean readPosition;
  private long rows;
  private long repeats;
  private long firstRepeatLine;
  private int stepsBack;

  Moments(CsvEvents events, SampleSink first) {
    this.events = events;
    this.sink = first;
  }

  /**
   * One row.
   *
   * @throws Refused if time has stepped back too often
   */
  void row(long line, long ns, double reading, long known, long closed) throws Refused {
    if (ns <= lastNs && any) {
      notLater(line, ns, reading, known);
    } else {
      readKnown = known;
      readPosition = !Double.isNaN(reading);
    }
    any = true;
    lastNs = ns;
    rows++;
    sink.onRow(ns, reading, known, closed);
  }

  /** Stamp of the row last handed on, ns; before the first, less than any. */
  long lastNs() {
    return any ? lastNs : Long.MIN_VALUE;
  }

  /** Rows of the same contacts in the same states, each later than the one before it. */
  void rows(long[] timesNs, double[] readings, int count, long known, long closed) {
    any = true;
    lastNs = timesNs[count - 1];
    readKnown = known;
    readPosition = !Double.isNaN(readings[count - 1]);
    rows += count;
    sink.onRows(timesNs, readings, 0, count, known, closed);
  }

  /** A mark of the row that was last handed on. */
  void mark(String text) {
    sink.onMark(lastNs, Mark.of(text), text);
  }

  CsvSummary summary() {
    return new CsvSummary(rows, repeats, firstRepeatLine, stepsBack);
  }

  private void notLater(long line, long ns, double reading, long known) throws Refused {
    boolean position = !Double.isNaN(reading);
    if (ns < lastNs) {
      if (++stepsBack > MOST_STEPS_BACK) {
        throw new Refused(
            new CsvFault(
                line,
                1,
                "time has run backwards more than " + MOST_STEPS_BACK + " times",
                "expected a time column that rises"));
      }
      sink = events.onStepBack(line, lastNs, ns);
      readKnown = known;
      readPosition = position;
      return;
    }
    if ((known & readKnown) != 0 || (position && readPosition)) {
      repeats++;
      firstRepeatLine = repeats == 1 ? line : firstRepeatLine;
    }
    readKnown |= known;
    readPosition |= position;
  }
}
