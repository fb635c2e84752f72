package tripline.harness.recording;

import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

/** Where the rows of a file go that is refused already. */
final class Discard implements SampleSink {
  @Override
  public void onRow(long timeNs, double reading, long known, long closed) {}

  @Override
  public void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {}

  @Override
  public void onMark(long timeNs, Mark mark, String text) {}

  @Override
  public void onLoss(long fromNs, long toNs, long samples) {}
}
