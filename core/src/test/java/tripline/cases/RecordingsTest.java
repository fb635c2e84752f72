package tripline.cases;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The files in the tree are what the generator makes from its seeds, byte for byte. */
class RecordingsTest {
  private static final Path ROOT =
      Path.of(System.getProperty("tripline.root", "..")).resolve("recordings");
  private static final long MOST_BYTES_A_CASE = 1_500_000;
  private static final long MOST_BYTES = 14_000_000;

  static List<Case> cases() {
    return WriteRecordings.cases();
  }

  @ParameterizedTest
  @MethodSource("cases")
  void filesAreTheGenerators(Case c) throws IOException {
    long size = 0;
    for (Map.Entry<String, byte[]> file : c.files().entrySet()) {
      Path path = ROOT.resolve(c.name()).resolve(file.getKey());
      assertThat(path).exists();
      assertThat(Files.mismatch(path, temporary(file.getValue())))
          .as("first byte at which %s/%s differs", c.name(), file.getKey())
          .isEqualTo(-1);
      size += file.getValue().length;
    }
    assertThat(size).as("bytes of %s", c.name()).isLessThan(MOST_BYTES_A_CASE);
  }

  private static Path temporary(byte[] bytes) throws IOException {
    Path path = Files.createTempFile("tripline", ".case");
    path.toFile().deleteOnExit();
    return Files.write(path, bytes);
  }

  @Test
  void noCaseIsLeftOverAndAllTogetherStaySmall() throws IOException {
    List<String> names = cases().stream().map(Case::name).toList();
    try (Stream<Path> folders = Files.list(ROOT)) {
      assertThat(folders.filter(Files::isDirectory).map(p -> p.getFileName().toString()))
          .containsExactlyInAnyOrderElementsOf(names);
    }
    try (Stream<Path> files = Files.walk(ROOT)) {
      assertThat(files.filter(Files::isRegularFile).mapToLong(p -> p.toFile().length()).sum())
          .isLessThan(MOST_BYTES);
    }
  }
}
