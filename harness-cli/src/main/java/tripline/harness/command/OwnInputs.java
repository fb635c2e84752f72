package tripline.harness.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
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
          throw new ParameterException(
              line,
              "%s is read by this command and would be written over, expected another name for the"
                      .formatted(output)
                  + " answer");
        }
      }
    }
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
