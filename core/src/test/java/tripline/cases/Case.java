package tripline.cases;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
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
 */
public record Case(
    String name,
    String done,
    String outcome,
    JobSheet sheet,
    List<Recording> recordings,
    String decision,
    List<String> findings) {

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
    return "# %s%n%nFictional: %s, %s.%n%n%s%n%n%s%n%n    tripline check job.toml %s%n"
        .formatted(name, sheet.job().tag(), sheet.job().description(), done, outcome, files)
        .replace("\r\n", "\n");
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
