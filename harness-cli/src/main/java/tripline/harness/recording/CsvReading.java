package tripline.harness.recording;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import tripline.csv.CsvFault;
import tripline.csv.CsvMetadata;
import tripline.csv.CsvReader;
import tripline.csv.CsvRequest;
import tripline.csv.PositionZero;
import tripline.harness.failure.InputFailure;
import tripline.harness.jobfile.JobFile;
import tripline.harness.recording.RecordingFile.Rank;
import tripline.job.JobSheet;
import tripline.reduce.Reduction;
import tripline.reduce.Trace;
import tripline.sample.Drive;
import tripline.travel.RecordingTrace;

/** A CSV recording. */
final class CsvReading implements Reading {
  private final String file;
  private final JobFile job;
  private final Rank rank;
  private final RecordingEvents events;
  private final CsvReader reader;

  CsvReading(String file, JobFile job, Rank rank) {
    this.file = file;
    this.job = job;
    this.rank = rank;
    this.events = new RecordingEvents(job.sheet());
    this.reader = new CsvReader(job.layout(), request(job.sheet()), events);
  }

  /** Torque and motor channels may be missing: strokes by hand are recorded without them. */
  private static CsvRequest request(JobSheet sheet) {
    return new CsvRequest(sheet.channels(), optional(sheet));
  }

  /** Channels of the sheet that no contact of the chart uses. */
  static Set<String> optional(JobSheet sheet) {
    Set<String> optional = new HashSet<>(sheet.channels().contacts());
    sheet.contacts().forEach(c -> optional.remove(c.channel()));
    return optional;
  }

  @Override
  public boolean onBytes(byte[] bytes, int length) {
    return reader.accept(bytes, 0, length).isEmpty() && events.tooManyLine() == 0;
  }

  @Override
  public RecordingFile finish(Optional<Supplier<String>> sha256) {
    if (events.tooManyLine() > 0) {
      throw new InputFailure(
          file,
          events.tooManyLine(),
          1,
          "time steps back for the %dth time, expected a clock that runs forward"
              .formatted(RecordingEvents.MOST_STRETCHES));
    }
    reader.finish().ifPresent(fault -> refuse(file, fault));
    if (reader.summary().rows() == 0) {
      throw new InputFailure(file, "holds no rows, expected a recording");
    }
    return of(sha256.orElseThrow());
  }

  private static void refuse(String file, CsvFault fault) {
    throw new InputFailure(file, fault.line(), fault.column(), fault.message());
  }

  private RecordingFile of(Supplier<String> sha256) {
    List<String> notices = new ArrayList<>(events.notices());
    CsvMetadata metadata = events.header().metadata();
    List<Trace> reduced = events.reductions().stream().map(Reduction::finish).toList();
    Optional<Drive> stated = metadata.drive().or(() -> job.layout().drive());
    Drives drive = Drives.of(stated, "# drive: hand", reduced, job.sheet(), notices);
    PositionZero zero =
        metadata.zero().orElse(rank == Rank.FIRST ? PositionZero.LOST : PositionZero.KEPT);
    String digest = sha256.get();
    List<RecordingTrace> traces = new ArrayList<>();
    for (Trace trace : reduced) {
      RecordingTrace.Zero kept =
          traces.isEmpty() && zero == PositionZero.LOST
              ? RecordingTrace.Zero.LOST
              : RecordingTrace.Zero.KEPT;
      traces.add(new RecordingTrace(file, digest, drive.drive(), drive.told(), kept, trace));
    }
    return new RecordingFile(
        traces, metadata.started(), LoggerNames.of(metadata), notices, Optional.empty());
  }
}
