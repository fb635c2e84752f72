package tripline.harness.rehearse.port;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import tripline.harness.failure.LinkFailure;

/** Makes pseudo terminals under one name, with whichever of two programs is there. */
public final class PortMaker implements VirtualPort.Maker {
  private static final long APPEARS_WITHIN_NS = 5_000_000_000L;
  private static final long LOOK_AGAIN_MS = 5;
  private static final int MOST_COMPLAINT = 2000;

  /** What can hold a pseudo terminal. */
  public enum Holder {
    SOCAT,
    PYTHON3
  }

  private final Path link;
  private final List<Holder> holders;

  /**
   * @param link where the port is to appear; its folder exists
   * @param holders what to try, in this order
   */
  public PortMaker(Path link, List<Holder> holders) {
    this.link = link.toAbsolutePath();
    this.holders = List.copyOf(holders);
  }

  /**
   * A new port.
   *
   * @throws LinkFailure if there is something else under that name, or neither program runs
   */
  @Override
  public VirtualPort make() {
    clear();
    for (Holder holder : holders) {
      @Nullable Process child = start(holder);
      if (child != null) {
        return appeared(child, holder);
      }
    }
    throw new LinkFailure(
        link.toString(),
        "a serial device without hardware needs socat or python3 (Linux, macOS), and neither runs");
  }

  /** A dangling link is what a killed rehearsal leaves; anything else is somebody's. */
  private void clear() {
    if (!Files.exists(link, LinkOption.NOFOLLOW_LINKS)) {
      return;
    }
    if (!Files.isSymbolicLink(link) || Files.exists(link)) {
      throw new LinkFailure(
          link.toString(),
          "is there already, expected a free name: end the other rehearsal or give --link another");
    }
    try {
      Files.delete(link);
    } catch (IOException e) {
      throw new LinkFailure(link.toString(), "cannot be replaced: " + e.getMessage());
    }
  }

  private @Nullable Process start(Holder holder) {
    List<String> command =
        switch (holder) {
          case SOCAT -> List.of("socat", "PTY,raw,echo=0,link=" + escaped(), "STDIO");
          case PYTHON3 -> List.of("python3", "-c", script(), link.toString());
        };
    try {
      return new ProcessBuilder(new ArrayList<>(command)).start();
    } catch (IOException e) {
      return null;
    }
  }

  /** Characters that mean something to socat stand after a backslash. */
  private String escaped() {
    return link.toString().replaceAll("([\\\\,:!\"'(\\[{])", "\\\\$1");
  }

  private static String script() {
    try (InputStream in = PortMaker.class.getResourceAsStream("hold_terminal.py")) {
      if (in == null) {
        throw new IllegalStateException("hold_terminal.py is missing");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new IllegalStateException("hold_terminal.py cannot be read", e);
    }
  }

  private VirtualPort appeared(Process child, Holder holder) {
    long startNs = System.nanoTime();
    try {
      while (!Files.exists(link)) {
        boolean ended = child.waitFor(LOOK_AGAIN_MS, TimeUnit.MILLISECONDS);
        if (ended || System.nanoTime() - startNs > APPEARS_WITHIN_NS) {
          child.destroy();
          throw new LinkFailure(
              link.toString(), "cannot be made by " + holder + ": " + complaint(child));
        }
      }
    } catch (InterruptedException e) {
      child.destroy();
      Thread.currentThread().interrupt();
      throw new LinkFailure(link.toString(), "interrupted while it was made");
    }
    return new ChildPort(child, link.toString());
  }

  private static String complaint(Process child) {
    try {
      String said =
          new String(child.getErrorStream().readNBytes(MOST_COMPLAINT), StandardCharsets.UTF_8)
              .strip();
      return said.isEmpty() ? "it says nothing" : said.substring(said.lastIndexOf('\n') + 1);
    } catch (IOException e) {
      return "it ended";
    }
  }
}
