package tripline.bench.jmh;

import tripline.csv.CsvEvents;
import tripline.csv.CsvHeader;
import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

/** Takes samples and adds them up, so that none is optimised away. */
final class Adder implements CsvEvents, SampleSink {
  private double sum;

  double sum() {
    return sum;
  }

  @Override
  public SampleSink onHeader(CsvHeader header) {
    return this;
  }

  @Override
  public SampleSink onStepBack(long line, long fromNs, long toNs) {
    return this;
  }

  @Override
  public void onRow(long timeNs, double reading, long known, long closed) {
    sum += reading + timeNs + closed;
  }

  @Override
  public void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {
    sum += channel;
  }

  @Override
  public void onMark(long timeNs, Mark mark, String text) {
    sum += timeNs;
  }

  @Override
  public void onLoss(long fromNs, long toNs, long samples) {
    sum += samples;
  }
}
