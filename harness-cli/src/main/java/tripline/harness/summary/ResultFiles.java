package tripline.harness.summary;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Collects the results below a folder, one file after the other through one buffer. */
final class ResultFiles extends SimpleFileVisitor<Path> {
  /** A result of a thousand strokes is half of that, and the buffer has to hold the largest. */
  private static final int MOST_BYTES = 16 << 20;

  private static final int USUAL_BYTES = 256 << 10;

  private final Path folder;
  private final Path real;
  private final Map<String, List<ResultLine>> byTag = new TreeMap<>();
  private final List<String> damaged = new ArrayList<>();
  private byte[] bytes = new byte[USUAL_BYTES];
  private int others;

  private ResultFiles(Path folder, Path real) {
    this.folder = folder;
    this.real = real;
  }

  /**
   * Reads every {@code .json} file below a folder. The folder may be named by a link; links below
   * it are not followed, so that nothing is read twice and no circle walked.
   *
   * @throws IOException if the folder itself cannot be entered
   */
  static ResultFiles below(Path folder) throws IOException {
    ResultFiles files = new ResultFiles(folder, folder.toRealPath());
    Files.walkFileTree(files.real, files);
    return files;
  }

  Map<String, List<ResultLine>> byTag() {
    return byTag;
  }

  List<String> damaged() {
    return damaged;
  }

  int others() {
    return others;
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
      damaged.add(named(file) + ": is larger than 16 MiB, expected a result file");
      return;
    }
    String name = real.relativize(file).toString().replace('\\', '/');
    try {
      int length = load(file, (int) attributes.size());
      Optional<ResultLine> line =
          ResultScan.of(bytes, length, name, attributes.lastModifiedTime().toInstant());
      line.ifPresent(l -> byTag.computeIfAbsent(l.tag(), t -> new ArrayList<>()).add(l));
      others += line.isPresent() ? 0 : 1;
    } catch (UnusableResult e) {
      damaged.add(named(file) + ":" + e.place(bytes) + ": " + e.getMessage());
    } catch (IOException e) {
      damaged.add(named(file) + why(e));
    }
  }

  /** The file's bytes in the one buffer that serves them all. */
  private int load(Path file, int size) throws IOException {
    if (bytes.length < size) {
      bytes = new byte[Math.min(MOST_BYTES, Math.max(size, 2 * bytes.length))];
    }
    try (InputStream in = Files.newInputStream(file)) {
      return in.readNBytes(bytes, 0, size);
    }
  }

  @Override
  public FileVisitResult visitFileFailed(Path file, IOException e) throws IOException {
    if (file.equals(real)) {
      throw e;
    }
    damaged.add(named(file) + why(e));
    return FileVisitResult.CONTINUE;
  }

  @Override
  public FileVisitResult postVisitDirectory(Path directory, @Nullable IOException e) {
    if (e != null) {
      damaged.add(named(directory) + why(e));
    }
    return FileVisitResult.CONTINUE;
  }

  /** As whoever named the folder would find it. */
  private String named(Path file) {
    return folder.resolve(real.relativize(file)).toString();
  }

  static String why(IOException e) {
    if (e instanceof AccessDeniedException) {
      return ": may not be read, expected a readable result file";
    }
    if (e instanceof NoSuchFileException) {
      return ": went away while the folder was read";
    }
    return ": cannot be read: " + e.getMessage();
  }
}
