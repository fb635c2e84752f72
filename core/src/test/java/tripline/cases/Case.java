package tripline.cases;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import tripline.job.JobSheet;
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
 */
public record Case(
    String name,
    String done,
    String outcome,
    JobSheet sheet,
    List<Recording> recordings,
    String decision,
    List<String> findings,
    Optional<Compared> compared) {

  /** A case that stands alone. */
  public Case(
      String name,
      String done,
      String outcome,
      JobSheet sheet,
      List<Recording> recordings,
      String decision,
      List<String> findings) {
    this(name, done, outcome, sheet, recordings, decision, findings, Optional.empty());
  }

  /**
   * What its result is compared with.
   *
   * @param with the earlier case; empty for its own earlier setting
   * @param moved how far each cam truly moved in between, turns, + toward open
   */
  public record Compared(Optional<String> with, Map<String, Double> moved) {}

  /** The same case, compared. */
  public Case compared(Compared other) {
    return new Case(name, done, outcome, sheet, recordings, decision, findings, Optional.of(other));
  }

  /** Files of the case by name; what the product makes of them is blessed apart. */
  public Map<String, byte[]> files() {
    Map<String, byte[]> files = new TreeMap<>();
    files.put("job.toml", utf8(SheetText.of(sheet)));
    TruthText truth = new TruthText(this);
    for (Recording recording : recordings) {
      var csv = recording.csv(sheet.channels().contacts());
      files.put(recording.file(), csv.bytes());
      truth.add(recording, csv.firstS());
    }
    files.put("truth.json", utf8(Json.text(truth.whole())));
    files.put("README.md", utf8(readme()));
    return files;
  }

  private String readme() {
    String files = recordings.stream().map(Recording::file).collect(Collectors.joining(" "));
    String check = "tripline check job.toml " + files;
    String commands =
        compared
            .map(
                c ->
                    "%s --json result.json%n    tripline compare %sresult.json"
                        .formatted(
                            check, c.with().map(n -> "../" + n + "/result.json ").orElse("")))
            .orElse(check);
    return "# %s%n%nFictional: %s, %s.%n%n%s%n%n%s%n%n    %s%n"
        .formatted(name, sheet.job().tag(), sheet.job().description(), done, outcome, commands)
        .replace("\r\n", "\n");
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
