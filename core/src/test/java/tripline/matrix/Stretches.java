package tripline.matrix;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import tripline.reduce.Reduction;
import tripline.reduce.Trace;
import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

/** Begins another reduction wherever the rows' time steps back, as a reader of files does. */
final class Stretches implements SampleSink {
  private final Supplier<Reduction> make;
  private final List<Reduction> reductions = new ArrayList<>();
  private long lastNs = Long.MIN_VALUE;

  Stretches(Supplier<Reduction> make) {
    this.make = make;
    reductions.add(make.get());
  }

  /** What each stretch was reduced to, in order. */
  List<Trace> finish() {
    return reductions.stream().map(Reduction::finish).toList();
  }

  private SampleSink at(long timeNs) {
    if (timeNs < lastNs) {
      reductions.add(make.get());
    }
    lastNs = timeNs;
    return reductions.get(reductions.size() - 1);
  }

  @Override
  public void onRow(long timeNs, double reading, long known, long closed) {
    at(timeNs).onRow(timeNs, reading, known, closed);
  }

  @Override
  public void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {
    at(timeNs).onEdge(timeNs, resolutionNs, channel, state);
  }

  @Override
  public void onMark(long timeNs, Mark mark, String text) {
    at(timeNs).onMark(timeNs, mark, text);
  }

  @Override
  public void onLoss(long fromNs, long toNs, long samples) {
    at(fromNs).onLoss(fromNs, toNs, samples);
  }
}
