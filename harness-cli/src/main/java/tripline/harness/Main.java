package tripline.harness;

import picocli.CommandLine;
import tripline.harness.command.TriplineCommand;

/** Entry point of the command line. */
public final class Main {
  private Main() {}

  /** Runs the command line given. */
  public static void main(String[] args) {
    new CommandLine(new TriplineCommand()).usage(System.err);
  }
}
