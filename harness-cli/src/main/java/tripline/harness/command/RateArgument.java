package tripline.harness.command;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** How often a logger is to sample. */
final class RateArgument {
  private static final double LEAST_HZ = 0.001;
  private static final double MOST_HZ = 4_294_967;

  @Option(
      names = "--rate",
      paramLabel = "HZ",
      description = "Samples a second (default: the logger's own setting).")
  private @Nullable Double hz;

  /** Millihertz; 0: the logger's own setting. */
  long milliHz(CommandLine line) {
    if (hz == null) {
      return 0;
    }
    if (!(hz >= LEAST_HZ && hz <= MOST_HZ)) {
      throw new ParameterException(
          line, "--rate is %s, expected 0.001 to 4294967 Hz".formatted(hz));
    }
    return Math.round(hz * 1000);
  }
}
