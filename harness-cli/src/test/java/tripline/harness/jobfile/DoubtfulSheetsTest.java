package tripline.harness.jobfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Job sheets that can be used and should be looked at again: {@code NAME.toml} beside the doubts it
 * must raise, {@code NAME.expected}, one {@code line:column: doubt} a line.
 */
class DoubtfulSheetsTest {
  static Stream<Path> sheets() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("src/test/resources/doubtfulsheets"))) {
      return files.filter(f -> f.toString().endsWith(".toml")).sorted().toList().stream();
    }
  }

  @ParameterizedTest
  @MethodSource("sheets")
  void everyDoubtIsStatedWhereItBelongs(Path sheet) throws IOException {
    Path expected =
        sheet.resolveSibling(sheet.getFileName().toString().replace(".toml", ".expected"));
    assertThat(JobFile.read(sheet).doubts())
        .extracting(d -> d.line() + ":" + d.column() + ": " + d.message())
        .containsExactlyElementsOf(Files.readAllLines(expected));
  }
}
