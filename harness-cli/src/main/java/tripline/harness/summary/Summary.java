package tripline.harness.summary;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import tripline.harness.failure.InputFailure;
import tripline.measure.Decision;

/**
 * All results below a folder.
 *
 * @param actuators rejected first, then undecided, then accepted, each in order of the tag
 * @param results how many results they have
 * @param others {@code .json} files that are no results
 * @param damaged files that could not be read, each in a line
 */
public record Summary(List<Actuator> actuators, int results, int others, List<String> damaged) {
  /** A result of a thousand strokes is smaller. */
  private static final long MOST_BYTES = 64L << 20;

  /**
   * Reads every {@code .json} file below a folder; links are not followed.
   *
   * @throws InputFailure if it is no folder, or holds no result
   */
  public static Summary of(Path folder) {
    if (!Files.isDirectory(folder)) {
      throw new InputFailure(folder.toString(), "no such folder, expected one with result files");
    }
    Collector collector = new Collector(folder);
    try {
      Files.walkFileTree(folder, collector);
    } catch (IOException e) {
      throw new InputFailure(folder.toString(), "cannot be read: " + e.getMessage());
    }
    if (collector.results == 0 && collector.damaged.isEmpty()) {
      throw new InputFailure(
          folder.toString(), "holds no result files, expected some written with --json");
    }
    List<Actuator> actuators = new ArrayList<>();
    collector.byTag.forEach((tag, lines) -> actuators.add(new Actuator(tag, lines)));
    actuators.sort(Comparator.comparingInt(a -> rank(a.latest().decision())));
    return new Summary(actuators, collector.results, collector.others, collector.damaged);
  }

  private static int rank(Decision decision) {
    return switch (decision) {
      case REJECT -> 0;
      case UNDECIDED -> 1;
      case ACCEPT -> 2;
    };
  }

  /** How many actuators were last decided so. */
  long count(Decision decision) {
    return actuators.stream().filter(a -> a.latest().decision() == decision).count();
  }

  private static final class Collector extends SimpleFileVisitor<Path> {
    private final Path folder;
    private final Map<String, List<ResultLine>> byTag = new TreeMap<>();
    private final List<String> damaged = new ArrayList<>();
    private byte[] bytes = new byte[256 << 10];
    private int results;
    private int others;

    Collector(Path folder) {
      this.folder = folder;
    }

    @Override
    public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
      boolean json = file.toString().toLowerCase(Locale.ROOT).endsWith(".json");
      if (json && attributes.isRegularFile()) {
        read(file, attributes);
      }
      return FileVisitResult.CONTINUE;
    }

    private void read(Path file, BasicFileAttributes attributes) {
      if (attributes.size() > MOST_BYTES) {
        damaged.add(file + ": is larger than 64 MiB, expected a result file");
        return;
      }
      String name = folder.relativize(file).toString().replace('\\', '/');
      try {
        int length = load(file, (int) attributes.size());
        Optional<ResultLine> line =
            ResultScan.of(bytes, length, name, attributes.lastModifiedTime().toInstant());
        line.ifPresent(l -> byTag.computeIfAbsent(l.tag(), t -> new ArrayList<>()).add(l));
        results += line.isPresent() ? 1 : 0;
        others += line.isPresent() ? 0 : 1;
      } catch (MalformedJson e) {
        damaged.add(file + ":" + e.place(bytes) + ": not JSON, expected a result file");
      } catch (IOException e) {
        damaged.add(file + ": cannot be read: " + e.getMessage());
      }
    }

    /** The file's bytes in the one buffer that serves them all. */
    private int load(Path file, int size) throws IOException {
      if (bytes.length < size) {
        bytes = new byte[size + size / 2];
      }
      try (InputStream in = Files.newInputStream(file)) {
        return in.readNBytes(bytes, 0, size);
      }
    }

    @Override
    public FileVisitResult visitFileFailed(Path file, IOException e) {
      damaged.add(file + ": cannot be read: " + e.getMessage());
      return FileVisitResult.CONTINUE;
    }
  }
}
