package tripline.harness.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/** A measurement cannot be made again: no answer is written over what it was worked out from. */
final class OwnInputs {
  private OwnInputs() {}

  /**
   * Holds outputs apart from inputs, under whatever names they are given.
   *
   * @throws ParameterException if an output is one of the inputs
   */
  static void spare(CommandLine line, List<Path> inputs, List<Path> outputs) {
    for (Path output : outputs) {
      for (Path input : inputs) {
        if (isSameFile(input, output)) {
          throw refused(line, output);
        }
      }
    }
  }

  /**
   * Holds outputs apart from the {@code .json} files below a folder.
   *
   * @throws ParameterException if an output is one of them
   */
  static void spareBelow(CommandLine line, Path folder, List<Path> outputs) {
    for (Path output : outputs) {
      if (Files.isRegularFile(output) && isJsonBelow(folder, output)) {
        throw refused(line, output);
      }
    }
  }

  private static boolean isJsonBelow(Path folder, Path output) {
    try {
      Path real = output.toRealPath();
      return real.startsWith(folder.toRealPath())
          && real.toString().toLowerCase(Locale.ROOT).endsWith(".json");
    } catch (IOException e) {
      // The folder is not there: nothing in it is read.
      return false;
    }
  }

  private static ParameterException refused(CommandLine line, Path output) {
    return new ParameterException(
        line,
        "%s is read by this command and would be written over, expected another name for the answer"
            .formatted(output));
  }

  /** What is not there, or no plain file, cannot be lost. */
  private static boolean isSameFile(Path input, Path output) {
    try {
      return Files.isRegularFile(input)
          && Files.isRegularFile(output)
          && Files.isSameFile(input, output);
    } catch (IOException e) {
      return input.toAbsolutePath().normalize().equals(output.toAbsolutePath().normalize());
    }
  }
}
