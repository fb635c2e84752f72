package tripline.harness.capture;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** {@code tripline record} as a process of its own. */
final class RecordProcess implements AutoCloseable {
  private static final long PATIENCE_S = 60;

  private final Process process;
  private final Path errors;

  private RecordProcess(Process process, Path errors) {
    this.process = process;
    this.errors = errors;
  }

  /**
   * Starts it.
   *
   * @param before words of the command line before {@code java}
   */
  static RecordProcess start(Path folder, Path port, Path out, List<String> before)
      throws IOException {
    Path errors = folder.resolve(out.getFileName() + ".err");
    List<String> command = new ArrayList<>(before);
    command.addAll(
        java(
            List.of(),
            "record",
            "--no-keys",
            "--port",
            port.toString(),
            sheet(folder).toString(),
            out.toString()));
    Process process =
        new ProcessBuilder(command)
            .redirectError(errors.toFile())
            .redirectInput(ProcessBuilder.Redirect.from(new java.io.File("/dev/null")))
            .start();
    return new RecordProcess(process, errors);
  }

  /** The program as a process of the test's own classes. */
  static List<String> java(List<String> properties, String... arguments) {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC"));
    command.addAll(properties);
    command.add("-cp");
    command.add(
        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")));
    command.add("tripline.harness.Main");
    command.addAll(List.of(arguments));
    return command;
  }

  /** A sheet that fits {@link SimLogger}. */
  static Path sheet(Path folder) throws IOException {
    Path job = folder.resolve("job.toml");
    if (!Files.exists(job)) {
      Files.writeString(job, SHEET);
    }
    return job;
  }

  boolean isAlive() {
    return process.isAlive();
  }

  String errors() throws IOException {
    return Files.readString(errors);
  }

  /** kill -9. */
  void kill() throws InterruptedException {
    process.destroyForcibly();
    process.waitFor();
  }

  /** Sends signals, one right after the other, and waits for the end; the exit status. */
  int signal(String... names) throws IOException, InterruptedException {
    send(names);
    return status();
  }

  /** Sends signals, one right after the other. */
  void send(String... names) throws IOException, InterruptedException {
    String kills =
        Stream.of(names)
            .map(name -> "kill -" + name + " " + process.pid())
            .collect(Collectors.joining("; "));
    new ProcessBuilder("sh", "-c", kills).start().waitFor();
  }

  /** Whether it has said so on standard error. */
  boolean said(String words) {
    try {
      return errors().contains(words);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Waits for the end; the exit status. */
  int status() throws InterruptedException {
    if (!process.waitFor(PATIENCE_S, TimeUnit.SECONDS)) {
      process.destroyForcibly();
      throw new IllegalStateException("record does not end");
    }
    return process.exitValue();
  }

  String answers() throws IOException {
    try (InputStream answers = process.getInputStream()) {
      return new String(answers.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @Override
  public void close() {
    process.destroyForcibly();
  }

  private static final String SHEET =
      """
      [job]
      tag = "CW-114"
      [travel]
      span = 31.0
      [position]
      side = "drive"
      turns_per_unit = 1.0
      [ends.closed]
      seat = "limit"
      backoff = 0.5
      tolerance = 0.1
      [ends.open]
      seat = "limit"
      backoff = 0.5
      tolerance = 0.1
      [[cam]]
      name = "close"
      [[cam]]
      name = "quarter"
      trip = { from = "closed", percent = 25.0, tolerance = 2.0 }
      [[cam]]
      name = "open"
      [[contact]]
      name = "21-22"
      channel = "k1"
      cam = "close"
      closed = "open-side"
      role = "limit-closing"
      [[contact]]
      name = "23-24"
      channel = "k2"
      cam = "close"
      closed = "closed-side"
      role = "spare"
      [[contact]]
      name = "33-34"
      channel = "k3"
      cam = "quarter"
      closed = "open-side"
      role = "interlock"
      [[contact]]
      name = "41-42"
      channel = "k4"
      cam = "open"
      closed = "closed-side"
      role = "limit-opening"
      """;
}
