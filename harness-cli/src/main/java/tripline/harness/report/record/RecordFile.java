package tripline.harness.report.record;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import tripline.harness.failure.OutputFailure;
import tripline.harness.report.AnswerFile;
import tripline.harness.report.Provenance;
import tripline.harness.report.record.RecordPage.Medium;
import tripline.job.JobSheet;
import tripline.result.Result;

/** The record as a file. */
public final class RecordFile {
  private RecordFile() {}

  /** Whether a record can be written under this name: it ends in {@code .html} or {@code .pdf}. */
  public static boolean canBe(Path file) {
    return is(file, ".html") || is(file, ".pdf");
  }

  /**
   * Writes the record, whole or not at all.
   *
   * @param file ends in {@code .html} or {@code .pdf}, which says what is written
   * @throws IllegalArgumentException if it ends in anything else
   * @throws OutputFailure if it cannot be written
   */
  public static void write(Path file, Result result, JobSheet sheet, Provenance from) {
    if (!canBe(file)) {
      throw new IllegalArgumentException(file + " ends neither in .html nor in .pdf");
    }
    if (is(file, ".html")) {
      String page = RecordPage.of(result, sheet, from, Medium.SCREEN);
      AnswerFile.write(file, out -> out.write(page));
      return;
    }
    try {
      RecordPdf.write(RecordPage.of(result, sheet, from, Medium.PAPER), file);
    } catch (IOException e) {
      throw OutputFailure.of(file.toString(), e);
    }
  }

  private static boolean is(Path file, String ending) {
    return file.toString().toLowerCase(Locale.ROOT).endsWith(ending);
  }
}
