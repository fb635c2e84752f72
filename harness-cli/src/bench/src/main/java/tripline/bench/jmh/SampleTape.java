package tripline.bench.jmh;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Arrays;
import java.util.OptionalDouble;
import tripline.bench.MakeRecording;
import tripline.csv.CsvEvents;
import tripline.csv.CsvHeader;
import tripline.csv.CsvLayout;
import tripline.csv.CsvReader;
import tripline.csv.CsvRequest;
import tripline.reduce.ReductionSettings;
import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

/** The samples of a recording in arrays, to be played again without reading it. */
final class SampleTape implements CsvEvents, SampleSink {
  private static final int SETTLE_NS = 10_000_000;

  long[] timeNs = new long[1 << 16];
  double[] reading = new double[1 << 16];
  long[] closed = new long[1 << 16];
  long known;
  int size;

  private SampleTape() {}

  /** The recording of that many megabytes and strokes, at 1 kHz. */
  static SampleTape of(int megabytes, int strokes) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    MakeRecording.of(megabytes * 1_000_000L, 1000, strokes).write(out);
    SampleTape tape = new SampleTape();
    CsvReader reader =
        new CsvReader(CsvLayout.DEFAULT, CsvRequest.all(MakeRecording.channels()), tape);
    reader.accept(out.toByteArray(), 0, out.size());
    return tape;
  }

  /** As the job sheet of these recordings has it. */
  static ReductionSettings settings() {
    return new ReductionSettings(
        MakeRecording.channels(), SETTLE_NS, 0, 0.0001, OptionalDouble.empty(), 1);
  }

  /** Plays samples, their times shifted. */
  void play(SampleSink sink, int from, int to, long shiftNs) {
    for (int i = from; i < to; i++) {
      sink.onRow(timeNs[i] + shiftNs, reading[i], known, closed[i]);
    }
  }

  @Override
  public SampleSink onHeader(CsvHeader header) {
    return this;
  }

  @Override
  public SampleSink onStepBack(long line, long fromNs, long toNs) {
    throw new IllegalStateException("time steps back in line " + line);
  }

  @Override
  public void onRow(long ns, double value, long knownContacts, long closedContacts) {
    if (size == timeNs.length) {
      timeNs = Arrays.copyOf(timeNs, 2 * size);
      reading = Arrays.copyOf(reading, 2 * size);
      closed = Arrays.copyOf(closed, 2 * size);
    }
    timeNs[size] = ns;
    reading[size] = value;
    closed[size] = closedContacts;
    known = knownContacts;
    size++;
  }

  @Override
  public void onEdge(long ns, long resolutionNs, int channel, ContactState state) {}

  @Override
  public void onMark(long ns, Mark mark, String text) {}

  @Override
  public void onLoss(long fromNs, long toNs, long samples) {}
}
