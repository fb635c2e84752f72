package tripline.harness.capture;

import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

/** What the inputs show now. */
final class LiveState implements SampleSink {
  private double reading = Double.NaN;
  private long known;
  private long closed;
  private long marks;

  @Override
  public void onRow(long timeNs, double read, long knownNow, long closedNow) {
    reading = Double.isNaN(read) ? reading : read;
    known |= knownNow;
    closed = (closed & ~knownNow) | (closedNow & knownNow);
  }

  @Override
  public void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {
    long bit = 1L << channel;
    known |= bit;
    closed = state == ContactState.CLOSED ? closed | bit : closed & ~bit;
  }

  @Override
  public void onMark(long timeNs, Mark mark, String text) {
    marks++;
  }

  @Override
  public void onLoss(long fromNs, long toNs, long samples) {}

  /** Position in units of the reading; NaN until there was one. */
  double reading() {
    return reading;
  }

  /** Channels of which a state is known. */
  long known() {
    return known;
  }

  /** Channels that are closed. */
  long closed() {
    return closed;
  }

  /** Marks so far. */
  long marks() {
    return marks;
  }
}
