package tripline.harness.terminal;

import java.io.PrintWriter;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * One line at the bottom of the terminal that is written over and over, and lines that stay above
 * it. Where there is no terminal only those that stay are written.
 *
 * <p>A thread of its own writes them: a terminal that is held (Ctrl-S, text being selected) or a
 * pipe that nobody reads must never hold up who has something to say.
 */
public final class ProgressLine implements AutoCloseable {
  private static final int USUAL_COLUMNS = 80;
  private static final int MOST_WAITING = 256;
  private static final long LOOK_MS = 50;

  /** What a held terminal does not take within this at the end is left unsaid. */
  private static final long PATIENCE_MS = 2000;

  private final PrintWriter out;
  private final boolean terminal;
  private final int columns;
  private final BlockingQueue<String> lines = new ArrayBlockingQueue<>(MOST_WAITING);
  private final Thread writer = new Thread(this::run, "progress");
  private volatile String latest = "";
  private volatile boolean ends;
  private String written = "";

  private ProgressLine(PrintWriter out, boolean terminal, int columns) {
    this.out = out;
    this.terminal = terminal;
    this.columns = columns;
    writer.setDaemon(true);
    writer.start();
  }

  /** On standard error, if that is a terminal: the launcher says so. */
  public static ProgressLine ofProcess(PrintWriter errors) {
    boolean terminal = Boolean.getBoolean("tripline.terminal.errors");
    int columns = terminal ? TerminalSize.ofProcess().columns() : USUAL_COLUMNS;
    return new ProgressLine(errors, terminal, columns);
  }

  /** For a terminal of so many columns. */
  static ProgressLine on(PrintWriter out, int columns) {
    return new ProgressLine(out, true, columns);
  }

  /** Writes over what was shown, as soon as the terminal takes it; cut to the width. */
  public void show(String text) {
    latest = text;
  }

  /** A line that stays; where more than {@value #MOST_WAITING} wait already it is left out. */
  public void say(String text) {
    lines.offer(text);
  }

  private void run() {
    try {
      boolean last = false;
      while (!last) {
        last = ends;
        for (String line = next(last); line != null; line = lines.poll()) {
          overwrite("");
          out.println((terminal ? "\r" : "") + line);
        }
        overwrite(last ? "" : latest);
      }
      if (terminal) {
        out.print("\r");
      }
      out.flush();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private @Nullable String next(boolean last) throws InterruptedException {
    return last ? lines.poll() : lines.poll(LOOK_MS, TimeUnit.MILLISECONDS);
  }

  private void overwrite(String text) {
    String cut = text.length() < columns ? text : text.substring(0, columns - 1);
    if (terminal && !cut.equals(written)) {
      out.print("\r" + cut + " ".repeat(Math.max(0, written.length() - cut.length())));
      out.flush();
      written = cut;
    }
  }

  /** Takes the line away once all is said. */
  @Override
  public void close() {
    ends = true;
    try {
      writer.join(PATIENCE_MS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
