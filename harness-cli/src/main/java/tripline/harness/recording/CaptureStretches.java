package tripline.harness.recording;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import tripline.capture.CaptureBegin;
import tripline.capture.CaptureDecoder;
import tripline.capture.CaptureSamples;
import tripline.harness.recording.RecordingFile.Rank;
import tripline.job.JobSheet;
import tripline.link.Identity;
import tripline.link.LinkMessage;
import tripline.link.MessageType;
import tripline.link.SinkSource;
import tripline.reduce.ReductionSettings;
import tripline.sample.SampleSink;
import tripline.travel.RecordingTrace;

/**
 * The bytes of a capture as stretches in which time only goes forward, each with a sink of its own
 * that is made once the logger has described itself.
 */
final class CaptureStretches<S extends SampleSink> {
  /** A reduction a stretch, and not without end: as for CSV. */
  static final int MOST = RecordingEvents.MOST_STRETCHES;

  private final JobSheet sheet;
  private final Function<ReductionSettings, S> make;
  private final CaptureSamples capture;
  private final CaptureDecoder decoder;
  private final List<S> sinks = new ArrayList<>();
  private final List<SinkSource.Break> breaks = new ArrayList<>();
  private final List<Identity> loggers = new ArrayList<>();
  private long messages;
  private boolean tooMany;

  /**
   * @param make a sink for a stretch
   */
  CaptureStretches(JobSheet sheet, Function<ReductionSettings, S> make) {
    this.sheet = sheet;
    this.make = make;
    this.capture = new CaptureSamples(sheet.channels(), this::begin, this::onMessage);
    this.decoder = new CaptureDecoder(capture);
  }

  private void onMessage(MessageType type, byte[] body, int length) {
    messages += type == MessageType.EDGES || type == MessageType.MARK ? 1 : 0;
    if (type == MessageType.IDENTITY
        && LinkMessage.read(type, body) instanceof Identity said
        && (loggers.isEmpty() || !loggers.get(loggers.size() - 1).equals(said))
        && loggers.size() < MOST) {
      loggers.add(said);
    }
  }

  private SampleSink begin(SinkSource.Break why) {
    if (sinks.size() == MOST) {
      tooMany = true;
      return new Discard();
    }
    S sink = make.apply(settings());
    sinks.add(sink);
    breaks.add(why);
    return sink;
  }

  /** What a reduction of the next stretch must know. */
  ReductionSettings settings() {
    return LoggerSettings.of(sheet, capture.samples().channels());
  }

  /** Takes the next bytes of the capture. */
  void onBytes(byte[] bytes, int length) {
    decoder.accept(bytes, 0, length);
  }

  CaptureSamples capture() {
    return capture;
  }

  CaptureDecoder decoder() {
    return decoder;
  }

  /** The sinks so far, one a stretch. */
  List<S> sinks() {
    return sinks;
  }

  /** Why each stretch began. */
  List<SinkSource.Break> breaks() {
    return breaks;
  }

  /** Everybody who described himself, in order. */
  List<Identity> loggers() {
    return loggers;
  }

  /** Messages with edges or marks, which may be on their way still. */
  long events() {
    return messages;
  }

  /** Whether there were more stretches than are told apart. */
  boolean tooMany() {
    return tooMany;
  }

  /** Position zero of a stretch. */
  RecordingTrace.Zero zero(int stretch, Rank rank) {
    return stretch > 0 ? zero(breaks.get(stretch)) : firstZero(rank);
  }

  /** A logger that was switched on again may count from anywhere. */
  static RecordingTrace.Zero zero(SinkSource.Break why) {
    return why == SinkSource.Break.NEW_SESSION
        ? RecordingTrace.Zero.LOST
        : RecordingTrace.Zero.KEPT;
  }

  private RecordingTrace.Zero firstZero(Rank rank) {
    boolean lost =
        capture
            .begin()
            .flatMap(CaptureBegin::zero)
            .map(z -> z == CaptureBegin.Zero.LOST)
            .orElse(rank == Rank.FIRST);
    return lost ? RecordingTrace.Zero.LOST : RecordingTrace.Zero.KEPT;
  }
}
