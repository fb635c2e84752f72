package tripline.harness.jobfile;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.tomlj.TomlParseResult;
import tripline.csv.CsvLayout;
import tripline.harness.failure.InputError;
import tripline.harness.failure.InputFailure;
import tripline.job.JobSheet;

/**
 * A job sheet as read from its file.
 *
 * @param file the file as the user named it
 * @param sha256 digest of its bytes, lower-case hex
 * @param sheet what was intended
 * @param layout how its recordings are written
 * @param doubts what an engineer should look at again, assumptions among them, in the order of the
 *     file
 * @param assumptions what the sheet does not say and was taken as usual
 */
public record JobFile(
    String file,
    String sha256,
    JobSheet sheet,
    CsvLayout layout,
    List<SheetNote> doubts,
    List<SheetNote> assumptions) {
  /** More lines than this help nobody. */
  static final int MOST_ERRORS = 50;

  public JobFile {
    doubts = List.copyOf(doubts);
    assumptions = List.copyOf(assumptions);
  }

  /**
   * Reads a job sheet.
   *
   * @throws InputFailure with everything that is wrong, if the sheet cannot be used
   */
  public static JobFile read(Path path) {
    return of(path.toString(), SheetText.read(path));
  }

  /**
   * A job sheet that lies in memory.
   *
   * @param file what errors call it
   * @throws InputFailure with everything that is wrong, if the sheet cannot be used
   */
  public static JobFile ofText(String file, String text) {
    return of(file, SheetText.of(text));
  }

  private static JobFile of(String file, SheetText text) {
    TomlParseResult toml = text.toml(file);
    Notes notes = new Notes(new Places(toml));
    SheetReader reader = new SheetReader(toml, notes);
    JobSheet sheet = reader.sheet();
    CsvLayout layout = reader.layout(sheet);
    List<SheetNote> errors = notes.errors();
    if (!errors.isEmpty()) {
      throw failure(file, errors);
    }
    return new JobFile(file, text.sha256(), sheet, layout, notes.doubts(), notes.assumptions());
  }

  /** All errors as one failure, the first {@value #MOST_ERRORS} of them in words. */
  static InputFailure failure(String file, List<SheetNote> errors) {
    List<InputError> lines = new ArrayList<>();
    errors.stream()
        .limit(MOST_ERRORS)
        .forEach(e -> lines.add(new InputError(file, e.line(), e.column(), e.message())));
    int more = errors.size() - MOST_ERRORS;
    if (more > 0) {
      lines.add(new InputError(file, "%d more error%s".formatted(more, more == 1 ? "" : "s")));
    }
    return new InputFailure(lines);
  }
}
