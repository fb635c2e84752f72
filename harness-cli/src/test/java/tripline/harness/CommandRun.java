package tripline.harness;

import java.io.PrintWriter;
import java.io.StringWriter;

/**
 * What one command line did.
 *
 * @param status exit status
 * @param answers all of standard output
 * @param errors all of standard error
 */
record CommandRun(int status, String answers, String errors) {
  static CommandRun of(String... args) {
    StringWriter answers = new StringWriter();
    StringWriter errors = new StringWriter();
    int status =
        Main.run(new Streams(new PrintWriter(answers), new PrintWriter(errors, true)), args);
    return new CommandRun(status, answers.toString(), errors.toString());
  }
}
