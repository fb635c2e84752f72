package tripline.harness;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/** The two streams of a process: answers on one, all else on the other. */
record Streams(PrintWriter answers, PrintWriter errors) {
  /**
   * Takes the process's streams.
   *
   * <p>{@code System.out} leads to standard error afterwards, so that nothing a library prints ends
   * up inside an answer.
   */
  static Streams ofProcess() {
    Charset charset = charset();
    PrintStream errors = new PrintStream(new FileOutputStream(FileDescriptor.err), true, charset);
    System.setErr(errors);
    System.setOut(errors);
    return new Streams(
        new PrintWriter(new FileOutputStream(FileDescriptor.out), false, charset),
        new PrintWriter(new OutputStreamWriter(errors, charset), true));
  }

  /** UTF-8, except where a Windows console shows the output and has an encoding of its own. */
  private static Charset charset() {
    boolean windows =
        System.getProperty("os.name", "").toLowerCase(Locale.ROOT).startsWith("windows");
    var console = windows ? System.console() : null;
    return console == null ? StandardCharsets.UTF_8 : console.charset();
  }
}
