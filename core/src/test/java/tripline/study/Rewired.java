package tripline.study;

import java.util.List;
import tripline.sample.Channels;
import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

/** Hands rows on with their contact bits in another order. */
final class Rewired implements SampleSink {
  private final SampleSink to;
  private final int[] bit;

  /**
   * @param from channel names in the order of the bits that come in
   * @param order in which they go out
   */
  Rewired(SampleSink to, List<String> from, Channels order) {
    this.to = to;
    bit = from.stream().mapToInt(order::indexOf).toArray();
  }

  @Override
  public void onRow(long timeNs, double reading, long known, long closed) {
    to.onRow(timeNs, reading, moved(known), moved(closed));
  }

  private long moved(long mask) {
    long out = 0;
    for (int i = 0; i < bit.length; i++) {
      out |= (mask >>> i & 1) << bit[i];
    }
    return out;
  }

  @Override
  public void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {
    to.onEdge(timeNs, resolutionNs, bit[channel], state);
  }

  @Override
  public void onMark(long timeNs, Mark mark, String text) {
    to.onMark(timeNs, mark, text);
  }

  @Override
  public void onLoss(long fromNs, long toNs, long samples) {
    to.onLoss(fromNs, toNs, samples);
  }
}
