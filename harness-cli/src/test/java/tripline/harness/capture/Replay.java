package tripline.harness.capture;

import java.util.ArrayList;
import java.util.List;
import tripline.capture.CaptureDecoder;
import tripline.capture.CaptureSamples;
import tripline.sample.Channels;
import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

/** A capture of a {@link SimLogger} read back; each row is held to what the logger sampled. */
final class Replay implements SampleSink {
  final List<String> marks = new ArrayList<>();
  final List<Long> losses = new ArrayList<>();
  final List<Long> rowsByStretch = new ArrayList<>();
  final CaptureSamples samples =
      new CaptureSamples(
          new Channels(List.of("k1", "k2", "k3", "k4")),
          why -> {
            rowsByStretch.add(0L);
            firstNs = -1;
            return this;
          });
  final CaptureDecoder decoder = new CaptureDecoder(samples);
  private final long periodNs;
  private long firstNs = -1;

  private Replay(long periodMicros) {
    this.periodNs = periodMicros * 1000;
  }

  static Replay of(byte[] file, long periodMicros) {
    return of(file, file.length, periodMicros);
  }

  static Replay of(byte[] file, int length, long periodMicros) {
    Replay replay = new Replay(periodMicros);
    replay.decoder.accept(file, 0, length);
    replay.decoder.finish();
    replay.samples.finish(replay.decoder.counters().lastMicros());
    return replay;
  }

  long rows() {
    return rowsByStretch.stream().mapToLong(Long::longValue).sum();
  }

  @Override
  public void onRow(long timeNs, double reading, long known, long closed) {
    firstNs = firstNs < 0 ? timeNs : firstNs;
    long number = (timeNs - firstNs) / periodNs;
    boolean right =
        timeNs - firstNs == number * periodNs
            && reading == SimLogger.count(number) / 1000.0
            && known == 15
            && closed == SimLogger.levels(number);
    if (!right) {
      throw new AssertionError(
          "row %d at %d ns: %s %d %d".formatted(number, timeNs, reading, known, closed));
    }
    rowsByStretch.set(rowsByStretch.size() - 1, rowsByStretch.get(rowsByStretch.size() - 1) + 1);
  }

  @Override
  public void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {
    throw new AssertionError("no edges are sent");
  }

  @Override
  public void onMark(long timeNs, Mark mark, String text) {
    marks.add(mark + " " + text);
  }

  @Override
  public void onLoss(long fromNs, long toNs, long lost) {
    losses.add(lost);
  }
}
