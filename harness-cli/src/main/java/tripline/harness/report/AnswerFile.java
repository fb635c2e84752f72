package tripline.harness.report;

import java.io.IOException;
import java.io.Writer;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import tripline.harness.failure.OutputFailure;

/** An answer written to a file: whole, or not at all. */
public final class AnswerFile {
  private AnswerFile() {}

  /** Writes an answer. */
  public interface Answer {
    void write(Writer out) throws IOException;
  }

  /**
   * Writes an answer in UTF-8 beside its place and moves it there once it is whole. What is there
   * already and is no plain file (a pipe, a terminal) is written to as it is.
   *
   * @throws OutputFailure if it cannot be written
   */
  public static void write(Path path, Answer answer) {
    try {
      if (Files.exists(path) && !Files.isRegularFile(path)) {
        if (Files.isDirectory(path)) {
          throw new OutputFailure(path.toString(), "is a folder, expected a file to write");
        }
        fill(path, answer);
      } else {
        Path target = path.toAbsolutePath();
        Path partial = target.resolveSibling(target.getFileName() + ".partial");
        try {
          fill(partial, answer);
          replace(partial, target);
        } finally {
          Files.deleteIfExists(partial);
        }
      }
    } catch (IOException e) {
      throw OutputFailure.of(path.toString(), e);
    }
  }

  private static void fill(Path path, Answer answer) throws IOException {
    try (Writer out = Files.newBufferedWriter(path)) {
      answer.write(out);
    }
  }

  private static void replace(Path from, Path to) throws IOException {
    try {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
    }
  }
}
