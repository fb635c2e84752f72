package tripline.harness.command;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** The name that stands for standard output where a file may be given. */
final class StandardOutput {
  private StandardOutput() {}

  /** Whether an answer is to go there; not where there is none. */
  static boolean isMeantBy(@Nullable Path file) {
    return file != null && file.toString().equals("-");
  }
}
