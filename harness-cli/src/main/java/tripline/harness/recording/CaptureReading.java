package tripline.harness.recording;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import tripline.capture.CaptureBegin;
import tripline.capture.CaptureDecoder;
import tripline.capture.CaptureFormat;
import tripline.capture.CaptureSamples;
import tripline.harness.failure.InputFailure;
import tripline.harness.jobfile.JobFile;
import tripline.harness.recording.RecordingFile.Rank;
import tripline.link.Identity;
import tripline.reduce.Reduction;
import tripline.reduce.Trace;
import tripline.sample.Drive;
import tripline.travel.RecordingTrace;

/** A capture of the logger link. */
final class CaptureReading implements Reading {
  private final String file;
  private final JobFile job;
  private final Rank rank;
  private final CaptureStretches<Reduction> stretches;
  private final CaptureSamples capture;
  private final CaptureDecoder decoder;

  CaptureReading(String file, JobFile job, Rank rank) {
    this.file = file;
    this.job = job;
    this.rank = rank;
    this.stretches = new CaptureStretches<>(job.sheet(), Reduction::new);
    this.capture = stretches.capture();
    this.decoder = stretches.decoder();
  }

  @Override
  public boolean onBytes(byte[] bytes, int length) {
    stretches.onBytes(bytes, length);
    return !stretches.tooMany() && readable();
  }

  private boolean readable() {
    return capture.begin().map(b -> b.major() <= CaptureFormat.MAJOR).orElse(true);
  }

  @Override
  public RecordingFile finish(Optional<Supplier<String>> sha256) {
    decoder.finish();
    capture.finish(decoder.counters().lastMicros());
    refuseUnusable();
    List<String> notices =
        new ArrayList<>(
            CaptureNotices.of(
                capture, decoder, stretches.loggers(), stretches.breaks(), job.sheet()));
    List<Trace> reduced = stretches.sinks().stream().map(Reduction::finish).toList();
    Optional<CaptureBegin> begin = capture.begin();
    Optional<Drive> stated = begin.flatMap(CaptureBegin::drive).or(() -> job.layout().drive());
    Drives drive =
        Drives.of(stated, "record --drive, or drive in the sheet", reduced, job.sheet(), notices);
    String digest = sha256.orElseThrow().get();
    List<RecordingTrace> traces = new ArrayList<>();
    for (int i = 0; i < reduced.size(); i++) {
      traces.add(
          new RecordingTrace(
              file, digest, drive.drive(), drive.told(), stretches.zero(i, rank), reduced.get(i)));
    }
    return new RecordingFile(
        traces,
        begin.filter(b -> b.utcMicros() > 0).map(b -> instant(b.utcMicros())),
        LoggerNames.of(stretches.loggers()),
        notices,
        power());
  }

  private static Instant instant(long utcMicros) {
    return Instant.EPOCH.plus(utcMicros, ChronoUnit.MICROS);
  }

  /** Empty where the operator said himself whether position zero is kept. */
  private Optional<LoggerPower> power() {
    boolean stated = capture.begin().flatMap(CaptureBegin::zero).isPresent();
    List<Identity> loggers = stretches.loggers();
    return stated || loggers.isEmpty()
        ? Optional.empty()
        : Optional.of(new LoggerPower(loggers.get(0), loggers.get(loggers.size() - 1)));
  }

  private void refuseUnusable() {
    if (!readable()) {
      CaptureBegin begin = capture.begin().orElseThrow();
      throw new InputFailure(
          file,
          "is a capture of version %d.%d, expected version %d at most"
              .formatted(begin.major(), begin.minor(), CaptureFormat.MAJOR));
    }
    if (stretches.tooMany()) {
      throw new InputFailure(
          file,
          "the logger's clock begins again for the %dth time, expected one that runs forward"
              .formatted(CaptureStretches.MOST));
    }
    if (capture.samples().rows() == 0) {
      throw new InputFailure(file, "holds no samples, expected a recording: " + emptiness());
    }
    LoggerSettings.lacking(job.sheet(), capture.samples().channels())
        .ifPresent(
            lacking -> {
              throw new InputFailure(file, lacking);
            });
  }

  private String emptiness() {
    if (decoder.counters().records() == 0) {
      return "not one record of this capture is whole";
    }
    if (capture.counters().bytes() == 0) {
      return "not a byte came from the logger";
    }
    if (capture.samples().unplacedRows() > 0) {
      return "%d came, but the logger did not describe itself"
          .formatted(capture.samples().unplacedRows());
    }
    return "of %d bytes from the logger none make samples".formatted(capture.counters().bytes());
  }
}
