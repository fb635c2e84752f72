package tripline.harness.capture;

import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import tripline.harness.serial.Pty;

/** {@code tripline watch} on a terminal of its own. */
final class WatchProcess implements AutoCloseable {
  private static final long PATIENCE_S = 60;

  private final Pty terminal = Pty.open();
  private final ByteArrayOutputStream shown = new ByteArrayOutputStream();
  private final Path errors;
  private final String before;
  private final Process process;
  private final Thread reader = new Thread(this::read, "terminal");
  private volatile boolean ends;

  /**
   * Starts it.
   *
   * @param arguments after {@code watch}
   */
  WatchProcess(Path folder, String... arguments) throws IOException, InterruptedException {
    stty("sane");
    before = stty("-g");
    errors = folder.resolve("watch.err");
    List<String> words = new ArrayList<>(List.of("watch"));
    words.addAll(List.of(arguments));
    List<String> command =
        new ArrayList<>(List.of("env", "--default-signal=INT,TERM,HUP", "TERM=xterm"));
    command.addAll(
        RecordProcess.java(
            List.of("-Dtripline.terminal=true", "-Dtripline.keyboard=true"),
            words.toArray(String[]::new)));
    File end = new File(terminal.path());
    process =
        new ProcessBuilder(command)
            .redirectInput(end)
            .redirectOutput(end)
            .redirectError(errors.toFile())
            .start();
    reader.setDaemon(true);
    reader.start();
  }

  private void read() {
    byte[] bytes = new byte[1 << 16];
    while (!ends) {
      int got = terminal.read(bytes, 20);
      synchronized (shown) {
        shown.write(bytes, 0, Math.max(0, got));
      }
    }
  }

  /** All that came to the terminal. */
  String shown() {
    synchronized (shown) {
      return shown.toString(StandardCharsets.UTF_8);
    }
  }

  String errors() throws IOException {
    return Files.readString(errors);
  }

  boolean isAlive() {
    return process.isAlive();
  }

  void press(String keys) throws IOException {
    terminal.write(keys);
  }

  void send(String signal) throws IOException, InterruptedException {
    new ProcessBuilder("kill", "-" + signal, Long.toString(process.pid())).start().waitFor();
  }

  /** Waits for the end; the exit status. */
  int status() throws InterruptedException {
    if (!process.waitFor(PATIENCE_S, TimeUnit.SECONDS)) {
      throw new IllegalStateException("watch does not end");
    }
    return process.exitValue();
  }

  /** Whether the terminal works as it did before. */
  boolean terminalIsAsBefore() throws IOException, InterruptedException {
    return stty("-g").equals(before);
  }

  private String stty(String argument) throws IOException, InterruptedException {
    Process stty =
        new ProcessBuilder("stty", argument).redirectInput(new File(terminal.path())).start();
    String answer = new String(stty.getInputStream().readAllBytes(), StandardCharsets.US_ASCII);
    if (stty.waitFor() != 0) {
      throw new IllegalStateException("stty " + argument);
    }
    return answer;
  }

  @Override
  public void close() {
    process.destroyForcibly();
    ends = true;
    try {
      reader.join(TimeUnit.SECONDS.toMillis(PATIENCE_S));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    terminal.close();
  }
}
