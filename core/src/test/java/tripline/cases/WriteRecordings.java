package tripline.cases;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Writes the cases: {@code WriteRecordings DIR [NAME...]}. Leaves {@code expected/} alone. */
public final class WriteRecordings {
  private WriteRecordings() {}

  /** All cases. */
  public static List<Case> cases() {
    List<Case> cases = new ArrayList<>(HandCases.all());
    cases.addAll(MotorCases.all());
    cases.addAll(AcceptanceCases.all());
    return cases;
  }

  public static void main(String[] args) throws IOException {
    Path root = Path.of(args[0]);
    List<String> only = List.of(args).subList(1, args.length);
    for (Case c : cases()) {
      if (only.isEmpty() || only.contains(c.name())) {
        Path folder = Files.createDirectories(root.resolve(c.name()));
        for (Map.Entry<String, byte[]> file : c.files().entrySet()) {
          Files.write(folder.resolve(file.getKey()), file.getValue());
        }
      }
    }
  }
}
