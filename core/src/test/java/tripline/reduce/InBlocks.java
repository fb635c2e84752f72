package tripline.reduce;

import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.sample.SampleSink;
import tripline.truth.Rng;

/** Hands rows on as blocks of any length, from anywhere in the arrays, as a reader may. */
final class InBlocks implements SampleSink {
  private final SampleSink to;
  private final Rng rng;
  private final long[] timesNs = new long[600];
  private final double[] readings = new double[600];
  private int from;
  private int end;
  private int wanted = 1;
  private long known;
  private long closed;
  private long lastNs = Long.MIN_VALUE;

  InBlocks(SampleSink to, Rng rng) {
    this.to = to;
    this.rng = rng;
  }

  @Override
  public void onRow(long timeNs, double reading, long rowKnown, long rowClosed) {
    boolean later = timeNs > lastNs;
    if (!later || rowKnown != known || rowClosed != closed || end - from == wanted) {
      flush();
    }
    lastNs = timeNs;
    if (!later) {
      to.onRow(timeNs, reading, rowKnown, rowClosed);
      return;
    }
    known = rowKnown;
    closed = rowClosed;
    timesNs[end] = timeNs;
    readings[end] = reading;
    end++;
  }

  void flush() {
    if (end > from) {
      to.onRows(timesNs, readings, from, end, known, closed);
    }
    wanted = 1 + (int) (rng.uniform() * (timesNs.length - 1));
    from = (int) (rng.uniform() * (timesNs.length - wanted + 1));
    end = from;
  }

  @Override
  public void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {
    flush();
    to.onEdge(timeNs, resolutionNs, channel, state);
  }

  @Override
  public void onMark(long timeNs, Mark mark, String text) {
    flush();
    to.onMark(timeNs, mark, text);
  }

  @Override
  public void onLoss(long fromNs, long toNs, long samples) {
    flush();
    to.onLoss(fromNs, toNs, samples);
  }
}
