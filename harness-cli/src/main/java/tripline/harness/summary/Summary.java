package tripline.harness.summary;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import tripline.harness.failure.InputFailure;
import tripline.measure.Decision;

/**
 * All results below a folder.
 *
 * @param actuators rejected first, then undecided, then accepted, each in order of the tag
 * @param results how many results they have
 * @param others {@code .json} files that are no results
 * @param damaged files that could not be used, each in a line
 */
public record Summary(List<Actuator> actuators, int results, int others, List<String> damaged) {
  /**
   * Reads every {@code .json} file below a folder; links below it are not followed.
   *
   * @throws InputFailure if it is no folder, or holds no result and nothing that was to be one
   */
  public static Summary of(Path folder) {
    if (!Files.isDirectory(folder)) {
      String what = Files.exists(folder) ? "is no folder" : "no such folder";
      throw new InputFailure(folder.toString(), what + ", expected one with result files");
    }
    ResultFiles files;
    try {
      files = ResultFiles.below(folder);
    } catch (AccessDeniedException e) {
      throw new InputFailure(folder.toString(), "may not be read, expected a readable folder");
    } catch (IOException e) {
      throw new InputFailure(folder.toString(), "cannot be read: " + e.getMessage());
    }
    if (files.byTag().isEmpty() && files.damaged().isEmpty()) {
      throw new InputFailure(
          folder.toString(), "holds no result files, expected some written with --json");
    }
    List<Actuator> actuators = new ArrayList<>();
    files.byTag().forEach((tag, lines) -> actuators.add(new Actuator(tag, lines)));
    actuators.sort(Comparator.comparingInt(a -> rank(a.latest().decision())));
    int results = actuators.stream().mapToInt(a -> a.results().size()).sum();
    return new Summary(actuators, results, files.others(), files.damaged());
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
}
