package tripline.harness.recording;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import tripline.capture.CaptureFormat;
import tripline.harness.failure.InputFailure;
import tripline.harness.jobfile.JobFile;
import tripline.travel.RecordingTrace;

/**
 * One recording file, reduced.
 *
 * @param traces one, or several where time stepped back in it; at least one
 * @param started when its logger says it began
 * @param logger who recorded it, as the logger or the file names it
 * @param notices what the user should know about it, without the file's name
 * @param power the logger of a capture, where it decides whether position zero is kept
 */
public record RecordingFile(
    List<RecordingTrace> traces,
    Optional<Instant> started,
    Optional<String> logger,
    List<String> notices,
    Optional<LoggerPower> power) {
  /** Which recording of a job a file is. */
  enum Rank {
    FIRST,
    LATER
  }

  /** Whether the digest of a file is taken while it is read. */
  public enum Digest {
    TAKEN,
    /** Traces have an empty text in its place. */
    NOT_WANTED
  }

  public RecordingFile {
    traces = List.copyOf(traces);
    notices = List.copyOf(notices);
  }

  /** The file, as the user named it. */
  public String name() {
    return traces.get(0).name();
  }

  /**
   * Reads a file; its first byte tells a capture from text.
   *
   * @param digest whether its digest is wanted: half a second of a processor for 200 MB
   * @throws InputFailure if it cannot be used
   */
  static RecordingFile read(Path path, JobFile job, Rank rank, Digest digest) {
    Chosen chosen = new Chosen(path.toString(), job, rank);
    Optional<Supplier<String>> sha256 = InputBytes.read(path, digest, chosen);
    return chosen.reading().finish(sha256);
  }

  /** The reader that the first bytes ask for. */
  private static final class Chosen implements InputBytes.Sink {
    private final String file;
    private final JobFile job;
    private final Rank rank;
    private @Nullable Reading reading;

    Chosen(String file, JobFile job, Rank rank) {
      this.file = file;
      this.job = job;
      this.rank = rank;
    }

    @Override
    public boolean onBytes(byte[] bytes, int length) {
      if (reading == null && CaptureFormat.isCapture(bytes, length)) {
        reading = new CaptureReading(file, job, rank);
      }
      return reading().onBytes(bytes, length);
    }

    /** An empty file is an empty text. */
    Reading reading() {
      Reading chosen = reading;
      if (chosen == null) {
        chosen = new CsvReading(file, job, rank);
        reading = chosen;
      }
      return chosen;
    }
  }

  /** With the position zero that follows from the logger's power, where it is a capture's. */
  RecordingFile after(RecordingFile before) {
    if (power.isEmpty() || before.power.isEmpty()) {
      return this;
    }
    RecordingTrace.Zero zero =
        power.get().stayedOnSince(before.power.get())
            ? RecordingTrace.Zero.KEPT
            : RecordingTrace.Zero.LOST;
    List<RecordingTrace> changed = new ArrayList<>(traces);
    RecordingTrace first = traces.get(0);
    changed.set(
        0,
        new RecordingTrace(
            first.name(), first.sha256(), first.drive(), first.told(), zero, first.trace()));
    return new RecordingFile(changed, started, logger, notices, power);
  }
}
