package tripline.harness.command;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import picocli.CommandLine.Model.UsageMessageSpec;

/**
 * The statuses a command can end with and what each means of it: the one table that help is made
 * from. What is not in a command's row it never ends with. That is held by tests, which look up
 * every status a command ends with there.
 */
final class Endings {
  private static final String ANSWER = "an answer could not be written";
  private static final String SHEET = "the job sheet cannot be used";
  private static final String THERE = "OUT is there already, or cannot be written";

  private final Map<ExitStatus, String> meanings = new EnumMap<>(ExitStatus.class);
  private String heading = "Exit status";

  private Endings() {
    can(ExitStatus.USAGE, "the command line is wrong");
    can(ExitStatus.OUTPUT, ANSWER);
    can(ExitStatus.FAULT, "a fault of the program itself");
  }

  /** All there are, as of the program as a whole. */
  static Endings ofProgram() {
    return verdict()
        .headed("Exit status; a command's help says which it has, and what they mean there")
        .can(ExitStatus.ACCEPTED, "accepted, or done")
        .can(ExitStatus.LINK, "the link to the logger failed");
  }

  /** Those of a command; of the program where there is no command of that name. */
  static Endings of(String command) {
    return switch (command) {
      case "check", "accept" -> verdict();
      case "watch" ->
          verdict()
              .can(ExitStatus.INPUT, "a file cannot be used, or does not fit the logger")
              .can(ExitStatus.LINK, "no logger answers at the port, or not one sample came");
      case "compare" ->
          done("no trip point or backoff moved, as far as can be seen")
              .headed("Exit status, as of cmp and diff")
              .can(ExitStatus.REJECTED, "at least one moved")
              .can(ExitStatus.UNDECIDED, "none moved, but not all are known in both")
              .can(ExitStatus.INPUT, "a result cannot be used, or not with the other");
      case "conform" ->
          done("nothing fails, all that applies was seen")
              .can(ExitStatus.REJECTED, "a duty fails")
              .can(ExitStatus.UNDECIDED, "nothing fails, but something that applies was not seen")
              .can(ExitStatus.LINK, "nobody speaks at the port, or the line was lost");
      case "record" ->
          done("recorded; what is in it, `check` says")
              .can(ExitStatus.INPUT, SHEET + ", or does not fit the logger")
              .can(ExitStatus.LINK, "no logger answers at the port")
              .can(ExitStatus.OUTPUT, THERE);
      case "rehearse" ->
          done("all lines were done, or it was told to quit")
              .can(ExitStatus.INPUT, "the job sheet or a line to be done cannot be used")
              .can(ExitStatus.LINK, "the port cannot be made, or went away by itself");
      case "ports" -> done("listed, or none is present");
      case "chart" ->
          done("drawn; what is doubtful in it leaves the status alone")
              .can(ExitStatus.INPUT, SHEET);
      case "convert" ->
          done("converted")
              .can(ExitStatus.INPUT, "the recording or the job sheet cannot be used")
              .can(ExitStatus.OUTPUT, THERE);
      case "summary" ->
          done("all results were read; what they decide leaves the status alone")
              .can(ExitStatus.INPUT, "a file cannot be used, or the folder holds no result");
      case "seal" ->
          done("sealed")
              .can(ExitStatus.INPUT, "a file or the key cannot be used, or an input was changed")
              .can(ExitStatus.OUTPUT, "the seal, or a new key, could not be written");
      case "verify-seal" ->
          done("INTACT: all is as it was sealed, by the key it must be signed with")
              .headed("Exit status, of the seal only, whatever the sealed result decides")
              .can(ExitStatus.REJECTED, "BROKEN: something was changed, or the wrong key signed")
              .can(
                  ExitStatus.UNDECIDED,
                  "UNDECIDED: all is as it was sealed, by a key that is neither this user's"
                      + " nor named with --signer")
              .can(ExitStatus.INPUT, "the seal, or the key, cannot be used");
      default -> ofProgram();
    };
  }

  private static Endings done(String meaning) {
    return new Endings().can(ExitStatus.ACCEPTED, meaning);
  }

  private static Endings verdict() {
    return done("accepted")
        .can(ExitStatus.REJECTED, "rejected")
        .can(ExitStatus.UNDECIDED, "undecided")
        .can(ExitStatus.INPUT, "an input cannot be used");
  }

  private Endings can(ExitStatus status, String meaning) {
    meanings.put(status, meaning);
    return this;
  }

  private Endings headed(String text) {
    heading = text;
    return this;
  }

  /** The statuses there are. */
  Set<ExitStatus> statuses() {
    return meanings.keySet();
  }

  /** Puts them into a command's help. */
  void show(UsageMessageSpec help) {
    Map<String, String> lines = new LinkedHashMap<>();
    meanings.forEach((status, meaning) -> lines.put(Integer.toString(status.code()), meaning));
    help.exitCodeListHeading("%n" + heading + ":%n").exitCodeList(lines);
  }
}
