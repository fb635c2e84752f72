package tripline.harness.convert;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import tripline.harness.failure.OutputFailure;

/** A file that gets its name once it is whole. */
final class Pending implements AutoCloseable {
  private final Path target;
  private final Path partial;

  /**
   * @throws OutputFailure if there is something of that name already
   */
  Pending(Path target) {
    this.target = target;
    Path name = target.getFileName();
    this.partial = target.resolveSibling((name == null ? "" : name) + ".partial");
    if (Files.exists(target)) {
      throw new OutputFailure(
          target.toString(), "is there already, expected the name of a new file");
    }
  }

  /** Where to write until then. */
  Path path() {
    return partial;
  }

  /** It is whole. */
  void keep() throws IOException {
    Files.move(partial, target);
  }

  /** Removes what did not become whole. */
  @Override
  public void close() throws IOException {
    Files.deleteIfExists(partial);
  }
}
