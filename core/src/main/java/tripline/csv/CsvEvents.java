package tripline.csv;

import tripline.sample.SampleSink;

/** Takes a recording's header and hands out the sinks for its rows. */
public interface CsvEvents {
  /**
   * The header was read; comes once, before any row.
   *
   * @return where the rows go
   */
  SampleSink onHeader(CsvHeader header);

  /**
   * Time stepped back: what follows is to be taken as another recording.
   *
   * @param line line of the first row after the step
   * @param fromNs stamp before the step, ns
   * @param toNs stamp after it, ns, smaller
   * @return where the rows from this one on go
   */
  SampleSink onStepBack(long line, long fromNs, long toNs);
}
