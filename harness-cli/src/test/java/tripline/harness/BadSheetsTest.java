package tripline.harness;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Job sheets that cannot be used, each beside the lines it must be answered with: {@code NAME.toml}
 * and {@code NAME.expected}.
 */
class BadSheetsTest {
  private static final Path SHEETS = Path.of("src/test/resources/badsheets");

  static Stream<Path> sheets() throws IOException {
    try (Stream<Path> files = Files.list(SHEETS)) {
      return files.filter(f -> f.toString().endsWith(".toml")).sorted().toList().stream();
    }
  }

  @ParameterizedTest
  @MethodSource("sheets")
  void everyErrorIsALineAndNothingElseIsSaid(Path sheet) throws IOException {
    List<String> expected =
        Files.readAllLines(
            SHEETS.resolve(sheet.getFileName().toString().replace(".toml", ".expected")));
    CommandRun run = CommandRun.of("chart", sheet.toString());
    assertThat(run.errors().lines())
        .containsExactlyElementsOf(expected.stream().map(l -> SHEETS + "/" + l).toList());
    assertThat(run.answers()).isEmpty();
    assertThat(run.status()).isEqualTo(4);
  }

  @Test
  void thereAreManyAndEachHasItsLines() throws IOException {
    assertThat(sheets()).hasSizeGreaterThan(100);
    assertThat(sheets())
        .allMatch(s -> Files.exists(Path.of(s.toString().replace(".toml", ".expected"))));
  }

  @Test
  void aSheetThatIsNoFileIsOneLineToo(@TempDir Path folder) throws IOException {
    assertThat(CommandRun.of("chart", folder.resolve("none.toml").toString()))
        .isEqualTo(
            new CommandRun(
                4,
                "",
                folder.resolve("none.toml")
                    + ": no such file, expected a job sheet"
                    + System.lineSeparator()));
    assertThat(CommandRun.of("chart", folder.toString()).errors())
        .isEqualTo(folder + ": is a folder, expected a job sheet" + System.lineSeparator());
    Path large = folder.resolve("large.csv");
    Files.write(large, new byte[(1 << 20) + 1]);
    assertThat(CommandRun.of("chart", large.toString()).errors())
        .isEqualTo(
            large + ": is larger than 1024 KiB, expected a job sheet" + System.lineSeparator());
  }
}
