package tripline.harness.command;

import picocli.CommandLine.Command;

/** The command line as a whole: every other command hangs below it. */
@Command(name = "tripline")
public final class TriplineCommand {}
