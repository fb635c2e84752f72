package tripline.harness;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SummaryCommandTest {
  @TempDir private Path folder;

  @BeforeEach
  void aResult() throws IOException {
    Files.copy(
        Path.of("../recordings/right-fine/expected/result.json"), folder.resolve("fine.json"));
  }

  @Test
  void aFolderOfResultsIsAnswered() {
    CommandRun run = CommandRun.of("summary", folder.toString());
    assertThat(run.status()).isZero();
    assertThat(run.errors()).isEmpty();
    assertThat(run.answers()).contains("accept    FW-207", "1 actuators, 1 results");
  }

  @ParameterizedTest
  @ValueSource(strings = {"--csv", "--html", "--ndjson"})
  void noResultIsWrittenOver(String option) throws IOException {
    Path result = folder.resolve("fine.json");
    String before = Files.readString(result);
    CommandRun run = CommandRun.of("summary", folder.toString(), option, result.toString());
    assertThat(run.status()).isEqualTo(2);
    assertThat(run.answers()).isEmpty();
    assertThat(run.errors()).contains("is read by this command and would be written over");
    assertThat(result).hasContent(before);
    Path beside = folder.resolve("all.txt");
    assertThat(CommandRun.of("summary", folder.toString(), option, beside.toString()).status())
        .isZero();
    assertThat(beside).isNotEmptyFile();
  }

  @Test
  void aDamagedFileIsOneLineAndStatus4AndTheRestIsAnswered() throws IOException {
    Path cut = Files.writeString(folder.resolve("cut\u001b.json"), "{\"format\": 1,");
    CommandRun run = CommandRun.of("summary", folder.toString(), "--csv", "-");
    assertThat(run.status()).isEqualTo(4);
    assertThat(run.errors().lines())
        .containsExactly(
            cut.toString().replace('\u001b', '\uFFFD') + ":1:14: not JSON, expected a result file");
    assertThat(run.answers().lines())
        .hasSize(2)
        .anyMatch(line -> line.startsWith("FW-207,accept,"));
  }

  @Test
  void aFileIsNoFolder() {
    Path result = folder.resolve("fine.json");
    CommandRun run = CommandRun.of("summary", result.toString());
    assertThat(run.status()).isEqualTo(4);
    assertThat(run.errors())
        .isEqualTo(
            result + ": is no folder, expected one with result files" + System.lineSeparator());
  }

  @Test
  void aByteOrderMarkIsPassedOverAndAnotherEncodingIsNamed() throws IOException {
    String result = Files.readString(folder.resolve("fine.json"));
    Files.writeString(folder.resolve("marked.json"), "\uFEFF" + result.replace("FW-207", "FW-208"));
    Files.writeString(folder.resolve("wide.json"), result, StandardCharsets.UTF_16);
    CommandRun run = CommandRun.of("summary", folder.toString(), "--csv", "-");
    assertThat(run.answers().lines()).hasSize(3).anyMatch(line -> line.startsWith("FW-208,accept"));
    assertThat(run.errors().lines())
        .containsExactly(folder.resolve("wide.json") + ":1:1: not JSON, expected a result file");
    assertThat(run.status()).isEqualTo(4);
  }

  @Test
  void ofManyDamagedFilesTwentyAreNamed() throws IOException {
    for (int i = 0; i < 30; i++) {
      Files.writeString(folder.resolve("cut" + i + ".json"), "");
    }
    CommandRun run = CommandRun.of("summary", folder.toString());
    assertThat(run.status()).isEqualTo(4);
    assertThat(run.errors().lines()).hasSize(21).endsWith("10 more that could not be used");
    assertThat(run.answers()).contains("1 results", "30 that could not be used");
  }
}
