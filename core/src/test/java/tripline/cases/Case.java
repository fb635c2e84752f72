package tripline.cases;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import tripline.job.JobSheet;
import tripline.truth.CsvText;
import tripline.truth.Json;
import tripline.truth.SheetText;

/**
 * One case.
 *
 * @param name folder
 * @param done what was done to the valve, a sentence or two
 * @param outcome what must come out, a sentence or two
 * @param sheet what was intended
 * @param recordings what was recorded
 * @param decision accept, reject or undecided
 * @param findings codes of the faults and cautions that must be reported, and no others
 * @param compared what its result is compared with, where it is
 * @param command how it is judged
 */
public record Case(
    String name,
    String done,
    String outcome,
    JobSheet sheet,
    List<Recording> recordings,
    String decision,
    List<String> findings,
    Optional<Compared> compared,
    Command command) {

  /** A case that is checked and stands alone. */
  public Case(
      String name,
      String done,
      String outcome,
      JobSheet sheet,
      List<Recording> recordings,
      String decision,
      List<String> findings) {
    this(
        name,
        done,
        outcome,
        sheet,
        recordings,
        decision,
        findings,
        Optional.empty(),
        Command.CHECK);
  }

  /**
   * What its result is compared with.
   *
   * @param with the earlier case; empty for its own earlier setting
   * @param moved how far each cam truly moved in between, turns, + toward open
   */
  public record Compared(Optional<String> with, Map<String, Double> moved) {}

  /** A command of the product that judges recordings. */
  public enum Command {
    CHECK,
    ACCEPT;

    String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** The same case, compared. */
  public Case compared(Compared other) {
    return new Case(
        name, done, outcome, sheet, recordings, decision, findings, Optional.of(other), command);
  }

  /** The same case, its strokes to be accepted together. */
  public Case toAccept() {
    return new Case(
        name, done, outcome, sheet, recordings, decision, findings, compared, Command.ACCEPT);
  }

  /** Files of the case by name; what the product makes of them is blessed apart. */
  public Map<String, byte[]> files() {
    Map<String, byte[]> files = new TreeMap<>();
    byte[] job = utf8(SheetText.of(sheet));
    files.put("job.toml", job);
    TruthText truth = new TruthText(this);
    for (Recording recording : recordings) {
      if (recording.cable().isPresent()) {
        CaptureBytes capture = recording.capture(sha256(job), sheet.job().tag());
        files.put(recording.file(), capture.end());
        truth.add(recording, capture.firstS());
      } else {
        CsvText csv = recording.csv(sheet.channels().contacts());
        files.put(recording.file(), csv.bytes());
        truth.add(recording, csv.firstS());
      }
    }
    files.put("truth.json", utf8(Json.text(truth.whole())));
    files.put("README.md", utf8(readme()));
    return files;
  }

  private String readme() {
    String files = recordings.stream().map(Recording::file).collect(Collectors.joining(" "));
    String judge = "tripline " + command.word() + " job.toml " + files;
    String commands =
        compared
            .map(
                c ->
                    "%s --json result.json%n    tripline compare %sresult.json"
                        .formatted(
                            judge, c.with().map(n -> "../" + n + "/result.json ").orElse("")))
            .orElse(judge);
    return "# %s%n%nFictional: %s, %s.%n%n%s%n%n%s%n%n    %s%n"
        .formatted(name, sheet.job().tag(), sheet.job().description(), done, outcome, commands)
        .replace("\r\n", "\n");
  }

  private static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
