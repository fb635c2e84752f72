package tripline.harness.recording;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tripline.capture.CaptureBegin;
import tripline.harness.jobfile.JobFile;
import tripline.harness.recording.RecordingFile.Rank;
import tripline.link.LinkSamples;
import tripline.link.SinkSource;
import tripline.live.LiveReduction;
import tripline.live.Now;
import tripline.reduce.Reduction;
import tripline.reduce.Trace;
import tripline.sample.ContactState;
import tripline.sample.Drive;
import tripline.sample.Mark;
import tripline.sample.SampleSink;
import tripline.travel.RecordingTrace;

/**
 * A capture that is looked at while it is made. Fed with the bytes that go to its file, it tells at
 * any time what {@code check} would make of the file as it is.
 *
 * <p>One thread feeds it, another may ask; a question waits for a piece of bytes, never for a
 * reduction to be finished.
 */
public final class LiveCapture {
  private final String name;
  private final JobFile job;
  private final CaptureStretches<LiveReduction> stretches;
  private final List<Trace> ended = new ArrayList<>();
  private @Nullable Reduction spare;
  private int spareOf = -1;

  /**
   * @param name what messages call the recording
   */
  public LiveCapture(String name, JobFile job) {
    this.name = name;
    this.job = job;
    stretches = new CaptureStretches<>(job.sheet(), LiveReduction::new);
  }

  /** Takes the next bytes of the capture. */
  public synchronized void onBytes(byte[] bytes, int length) {
    stretches.onBytes(bytes, length);
  }

  /** The capture is at its end: what waited for later samples has its place now. */
  public synchronized void finish() {
    stretches.decoder().finish();
    stretches.capture().finish(stretches.decoder().counters().lastMicros());
  }

  /** Rises with everything that may change the answer. */
  public synchronized long happenings() {
    long sum = stretches.events();
    for (LiveReduction each : stretches.sinks()) {
      sum += each.happenings();
    }
    return sum;
  }

  /**
   * The latest that came.
   *
   * @param recording index of the recording it belongs to, among {@link #traces}
   * @param now edges that still wait for their samples among it
   */
  public record Latest(int recording, Now now) {}

  /** The latest that came; empty before the first sample. */
  public synchronized Optional<Latest> latest() {
    List<LiveReduction> sinks = stretches.sinks();
    int last = sinks.size() - 1;
    if (last < 0) {
      return Optional.empty();
    }
    Now now = sinks.get(last).now();
    States states = new States(now.known(), now.closed());
    stretches.capture().samples().copyWaiting(states);
    return Optional.of(new Latest(last, now.with(states.known, states.closed)));
  }

  /** Contact states after the edges it is handed. */
  private static final class States implements SampleSink {
    private long known;
    private long closed;

    States(long known, long closed) {
      this.known = known;
      this.closed = closed;
    }

    @Override
    public void onRow(long timeNs, double reading, long read, long shut) {}

    @Override
    public void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {
      long bit = 1L << channel;
      known |= bit;
      closed = state == ContactState.CLOSED ? closed | bit : closed & ~bit;
    }

    @Override
    public void onMark(long timeNs, Mark mark, String text) {}

    @Override
    public void onLoss(long fromNs, long toNs, long samples) {}
  }

  /**
   * The recordings as if the capture ended now, the same that {@code check} reads from its file.
   * Only one thread may ask.
   *
   * @return empty before the first sample
   */
  public List<RecordingTrace> traces() {
    List<Reduction> open = new ArrayList<>();
    List<RecordingTrace.Zero> zeros = new ArrayList<>();
    Optional<Drive> stated = copy(open, zeros);
    if (zeros.isEmpty()) {
      return List.of();
    }
    List<Trace> traces = new ArrayList<>(ended);
    open.forEach(reduction -> traces.add(reduction.finish()));
    Drives drive = Drives.of(stated, "", traces, job.sheet(), new ArrayList<>());
    List<RecordingTrace> recordings = new ArrayList<>();
    for (int i = 0; i < traces.size(); i++) {
      recordings.add(
          new RecordingTrace(name, "", drive.drive(), drive.told(), zeros.get(i), traces.get(i)));
    }
    return recordings;
  }

  /** Copies what still grows; stretches that ended are finished once and kept. */
  private synchronized Optional<Drive> copy(List<Reduction> open, List<RecordingTrace.Zero> zeros) {
    List<LiveReduction> sinks = stretches.sinks();
    int last = sinks.size() - 1;
    while (ended.size() < last) {
      ended.add(copied(sinks.get(ended.size()), ended.size()).finish());
    }
    LinkSamples samples = stretches.capture().samples();
    Optional<SinkSource.Break> next = samples.stretchToBegin();
    for (int i = 0; i <= last; i++) {
      zeros.add(stretches.zero(i, Rank.FIRST));
    }
    if (last >= 0) {
      Reduction copy = copied(sinks.get(last), last);
      if (next.isEmpty()) {
        samples.copyWaiting(copy);
      }
      open.add(copy);
    }
    if (last >= 0 && next.isPresent()) {
      Reduction edgesOnly = new Reduction(stretches.settings());
      samples.copyWaiting(edgesOnly);
      open.add(edgesOnly);
      zeros.add(CaptureStretches.zero(next.get()));
    }
    return stretches.capture().begin().flatMap(CaptureBegin::drive).or(() -> job.layout().drive());
  }

  private Reduction copied(LiveReduction from, int stretch) {
    Reduction copy = spare;
    if (copy == null || spareOf != stretch) {
      copy = from.spare();
      spare = copy;
      spareOf = stretch;
    }
    from.copyTo(copy);
    return copy;
  }

  /** What a user should know of the capture, as {@code check} tells it of the file. */
  public synchronized List<String> notices() {
    return CaptureNotices.of(
        stretches.capture(),
        stretches.decoder(),
        stretches.loggers(),
        stretches.breaks(),
        job.sheet());
  }
}
