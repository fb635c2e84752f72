package tripline.harness.terminal;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * The terminal on standard input, set to give every key at once and not to show it. {@code stty}
 * does it, which every POSIX system has; where there is none (Windows), or no terminal, keys come
 * by the line.
 */
final class Terminal implements AutoCloseable {
  private static final int PATIENCE_S = 5;
  private static final String NUMBER = "[1-9][0-9]{0,3}";

  private final String before;

  private Terminal(String before) {
    this.before = before;
  }

  /** Takes the terminal; empty where there is none. */
  static Optional<Terminal> take() {
    return stty("-g")
        .filter(state -> stty("-icanon", "-echo", "min", "1", "time", "0").isPresent())
        .map(Terminal::new);
  }

  /** Room on the terminal; empty where there is none, or it does not say. */
  static Optional<TerminalSize> size() {
    return stty("size")
        .map(size -> size.split(" "))
        .filter(parts -> parts.length == 2)
        .filter(parts -> parts[0].matches(NUMBER) && parts[1].matches(NUMBER))
        .map(parts -> new TerminalSize(Integer.parseInt(parts[1]), Integer.parseInt(parts[0])));
  }

  private static Optional<String> stty(String... arguments) {
    List<String> command = new ArrayList<>(List.of("stty"));
    command.addAll(List.of(arguments));
    try {
      Process process =
          new ProcessBuilder(command)
              .redirectInput(ProcessBuilder.Redirect.INHERIT)
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .start();
      try (InputStream answer = process.getInputStream()) {
        String text = new String(answer.readAllBytes(), StandardCharsets.US_ASCII).strip();
        return process.waitFor(PATIENCE_S, TimeUnit.SECONDS) && process.exitValue() == 0
            ? Optional.of(text)
            : Optional.empty();
      }
    } catch (IOException e) {
      return Optional.empty();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Optional.empty();
    }
  }

  /** Gives it back as it was. */
  @Override
  public void close() {
    stty(before);
  }
}
