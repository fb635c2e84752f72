package tripline.harness.command;

import java.io.PrintWriter;
import tripline.harness.report.Columns;
import tripline.harness.report.SafeText;

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
    StringBuilder line = new StringBuilder();
    for (String word : SafeText.line(notice).split(" ", -1)) {
      if (line.length() > MORE.length()
          && Columns.width(line.toString()) + 1 + Columns.width(word) > WIDTH) {
        errors.println(line);
        line.setLength(0);
        line.append(MORE).append(word);
      } else {
        line.append(line.length() == 0 ? "" : " ").append(word);
      }
    }
    errors.println(line);
  }
}
