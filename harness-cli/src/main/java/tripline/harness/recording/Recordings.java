package tripline.harness.recording;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import tripline.harness.failure.InputFailure;
import tripline.harness.jobfile.JobFile;
import tripline.harness.recording.RecordingFile.Digest;
import tripline.harness.recording.RecordingFile.Rank;

/** Recordings of one job, read file by file. */
public final class Recordings {
  private Recordings() {}

  /**
   * Reads recordings; the result does not depend on the number of threads.
   *
   * @param paths in the order they were recorded
   * @param threads files read at a time, &gt;= 1
   * @param digest whether the digest of each is wanted
   * @throws InputFailure of the first file, in the order given, that cannot be used
   */
  public static List<RecordingFile> read(
      List<Path> paths, JobFile job, int threads, Digest digest) {
    if (threads == 1 || paths.size() == 1) {
      List<RecordingFile> files = new ArrayList<>();
      for (int i = 0; i < paths.size(); i++) {
        files.add(RecordingFile.read(paths.get(i), job, rank(i), digest));
      }
      return joined(files);
    }
    ExecutorService pool = Executors.newFixedThreadPool(Math.min(threads, paths.size()));
    try {
      List<Future<RecordingFile>> pending = new ArrayList<>();
      for (int i = 0; i < paths.size(); i++) {
        Path path = paths.get(i);
        Rank rank = rank(i);
        pending.add(pool.submit(() -> RecordingFile.read(path, job, rank, digest)));
      }
      List<RecordingFile> files = new ArrayList<>();
      for (Future<RecordingFile> each : pending) {
        files.add(outcome(each));
      }
      return joined(files);
    } finally {
      pool.shutdownNow();
    }
  }

  /**
   * A CSV recording that lies in memory.
   *
   * @param name what errors call it
   * @param sha256 digest of its bytes, lower-case hex
   * @throws InputFailure if it cannot be used
   */
  public static RecordingFile ofBytes(String name, byte[] bytes, String sha256, JobFile job) {
    CsvReading reading = new CsvReading(name, job, Rank.FIRST);
    return reading.onBytes(bytes, bytes.length)
        ? reading.finish(Optional.of(() -> sha256))
        : reading.finish(Optional.empty());
  }

  /** Between two captures the logger itself tells whether it was on all the time. */
  private static List<RecordingFile> joined(List<RecordingFile> files) {
    List<RecordingFile> joined = new ArrayList<>();
    for (int i = 0; i < files.size(); i++) {
      joined.add(i == 0 ? files.get(0) : files.get(i).after(files.get(i - 1)));
    }
    return joined;
  }

  private static Rank rank(int index) {
    return index == 0 ? Rank.FIRST : Rank.LATER;
  }

  private static RecordingFile outcome(Future<RecordingFile> pending) {
    try {
      return pending.get();
    } catch (ExecutionException e) {
      if (e.getCause() instanceof RuntimeException cause) {
        throw cause;
      }
      if (e.getCause() instanceof Error cause) {
        throw cause;
      }
      throw new IllegalStateException("a reader failed in a way it cannot", e.getCause());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("reading was interrupted", e);
    }
  }
}
