package tripline.harness.recording;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tripline.csv.CsvFault;
import tripline.csv.CsvMetadata;
import tripline.csv.CsvReader;
import tripline.csv.CsvRequest;
import tripline.csv.PositionZero;
import tripline.harness.failure.InputFailure;
import tripline.harness.jobfile.JobFile;
import tripline.job.End;
import tripline.job.JobSheet;
import tripline.reduce.Reduction;
import tripline.reduce.Trace;
import tripline.sample.Drive;
import tripline.travel.RecordingTrace;

/**
 * One recording file, reduced.
 *
 * @param traces one, or several where time stepped back in it; at least one
 * @param started when its logger says it began
 * @param notices what the user should know about it, without the file's name
 */
public record RecordingFile(
    List<RecordingTrace> traces, Optional<Instant> started, List<String> notices) {
  /** Which recording of a job a file is. */
  enum Rank {
    FIRST,
    LATER
  }

  public RecordingFile {
    traces = List.copyOf(traces);
    notices = List.copyOf(notices);
  }

  /** The file, as the user named it. */
  public String name() {
    return traces.get(0).name();
  }

  /** SHA-256 of its bytes. */
  public String sha256() {
    return traces.get(0).sha256();
  }

  /**
   * Reads a file.
   *
   * @throws InputFailure if it cannot be used
   */
  static RecordingFile read(Path path, JobFile job, Rank rank) {
    String file = path.toString();
    if (Files.isDirectory(path)) {
      throw new InputFailure(file, "is a folder, expected a recording");
    }
    RecordingEvents events = new RecordingEvents(job.sheet());
    CsvReader reader = new CsvReader(job.layout(), request(job.sheet()), events);
    String sha256;
    try {
      Optional<String> digest =
          DigestedFile.read(
              path,
              (bytes, length) ->
                  reader.accept(bytes, 0, length).isEmpty() && events.tooManyLine() == 0);
      if (events.tooManyLine() > 0) {
        throw new InputFailure(
            file,
            events.tooManyLine(),
            1,
            "time steps back for the %dth time, expected a clock that runs forward"
                .formatted(RecordingEvents.MOST_STRETCHES));
      }
      reader.finish().ifPresent(fault -> refuse(file, fault));
      sha256 = digest.orElseThrow();
    } catch (NoSuchFileException e) {
      throw new InputFailure(file, "no such file, expected a recording");
    } catch (AccessDeniedException e) {
      throw new InputFailure(file, "may not be read, expected a readable recording");
    } catch (IOException e) {
      throw new InputFailure(file, "cannot be read: " + e.getMessage());
    }
    if (reader.summary().rows() == 0) {
      throw new InputFailure(file, "holds no rows, expected a recording");
    }
    return of(file, sha256, events, job, rank);
  }

  private static void refuse(String file, CsvFault fault) {
    throw new InputFailure(file, fault.line(), fault.column(), fault.message());
  }

  /** Torque and motor channels may be missing: strokes by hand are recorded without them. */
  private static CsvRequest request(JobSheet sheet) {
    Set<String> optional = new HashSet<>(sheet.channels().contacts());
    sheet.contacts().forEach(c -> optional.remove(c.channel()));
    return new CsvRequest(sheet.channels(), optional);
  }

  private static RecordingFile of(
      String file, String sha256, RecordingEvents events, JobFile job, Rank rank) {
    List<String> notices = new ArrayList<>(events.notices());
    CsvMetadata metadata = events.header().metadata();
    List<Trace> reduced = events.reductions().stream().map(Reduction::finish).toList();
    Optional<Drive> stated = metadata.drive().or(() -> job.layout().drive());
    Drive drive = stated.orElse(Drive.MOTOR);
    if (stated.isEmpty() && !motorRan(reduced, job.sheet())) {
      notices.add(
          "what drove the valve is not stated (# drive: hand), taken as motor: where it stood"
              + " still is no hard stop");
    }
    PositionZero zero =
        metadata.zero().orElse(rank == Rank.FIRST ? PositionZero.LOST : PositionZero.KEPT);
    List<RecordingTrace> traces = new ArrayList<>();
    for (Trace trace : reduced) {
      RecordingTrace.Zero kept =
          traces.isEmpty() && zero == PositionZero.LOST
              ? RecordingTrace.Zero.LOST
              : RecordingTrace.Zero.KEPT;
      traces.add(new RecordingTrace(file, sha256, drive, kept, trace));
    }
    return new RecordingFile(traces, metadata.started(), notices);
  }

  private static boolean motorRan(List<Trace> traces, JobSheet sheet) {
    long motors = 0;
    for (End end : End.values()) {
      motors |= sheet.motor(end).map(c -> 1L << sheet.channels().indexOf(c)).orElse(0L);
    }
    long channels = motors;
    return traces.stream()
        .anyMatch(
            t ->
                ((t.start().closed() | t.end().closed()) & channels) != 0
                    || t.changes().stream().anyMatch(c -> (1L << c.channel() & channels) != 0));
  }
}
