package tripline.harness.command;

import java.io.PrintWriter;
import tripline.harness.report.SafeText;
import tripline.harness.report.Wrapped;

/**
 * What a user should know though nothing is wrong, on standard error: for a screen of 80 columns,
 * what does not fit in lines that begin with two spaces. Words are not broken: a file's name can be
 * copied.
 */
final class Notices {
  private static final int WIDTH = 80;
  private static final String MORE = "  ";

  private Notices() {}

  /** Says one; it begins with the name of the file it is about. */
  static void say(String notice, PrintWriter errors) {
    Wrapped.lines(SafeText.line(notice), WIDTH, MORE).forEach(errors::println);
  }
}
