package tripline.harness.report;

import java.io.PrintWriter;
import tripline.job.JobSheet;
import tripline.result.Result;

/**
 * The answer of a check on one screen: the decision, what stopped the motor and what margin is
 * left, both ends, the cams, the development as built on the intended one, what is wrong and what
 * to turn.
 */
public final class CheckText {
  private CheckText() {}

  /**
   * Writes the answer, within 79 columns.
   *
   * @param result what was found
   * @param sheet what was intended; the sheet the result was made from
   */
  public static void write(Result result, JobSheet sheet, TextStyle style, PrintWriter out) {
    Page page = new Page(style, out);
    HeadText.write(page, result, sheet);
    AcceptanceText.write(page, result);
    PoweredText.write(page, result, sheet);
    EndsText.write(page, result);
    CamsText.write(page, result);
    DevelopmentText.write(page, result, sheet);
    AcceptanceText.writeRepeats(page, result);
    FindingsText.write(page, result);
    AdjustText.write(page, result);
    page.blank();
    page.line("Isolate, lock out and prove dead before the cover comes off; keep clear of the");
    page.line("handwheel when power returns. The plant's procedures and local codes govern.");
  }
}
