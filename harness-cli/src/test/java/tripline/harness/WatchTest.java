package tripline.harness;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a watch says that cannot begin; one that does is {@code WatchOverPtyTest}'s. */
class WatchTest {
  private static final String JOB = "../recordings/right-fine/job.toml";

  @TempDir private Path folder;

  private void fails(CommandRun run, int status, String... words) {
    assertThat(run.status()).as(run.errors()).isEqualTo(status);
    assertThat(run.answers()).isEmpty();
    assertThat(run.errors().lines()).hasSize(1);
    assertThat(run.errors()).contains(words);
  }

  private String port() {
    return folder.resolve("none").toString();
  }

  @Test
  void aPortThatIsNotThereIsStatus5() {
    fails(CommandRun.of("watch", "--port", port(), JOB), 5, port(), "no such port");
  }

  @Test
  void whatIsNoSerialPortIsStatus5() throws IOException {
    Path plain = Files.writeString(folder.resolve("plain"), "text");
    fails(CommandRun.of("watch", "--port", plain.toString(), JOB), 5, plain.toString());
  }

  @Test
  void aSheetThatCannotBeUsedIsStatus4() throws IOException {
    fails(CommandRun.of("watch", "--port", port(), "missing.toml"), 4, "missing.toml");
    Path bad = Files.writeString(folder.resolve("bad.toml"), "[job]\ntag = 7\n");
    assertThat(CommandRun.of("watch", "--port", port(), bad.toString()).status()).isEqualTo(4);
  }

  @Test
  void aReferenceThatIsNoResultIsStatus4() {
    fails(CommandRun.of("watch", "--port", port(), "--reference", JOB, JOB), 4, "job.toml");
  }

  @Test
  void nothingIsWrittenOver() throws IOException {
    Path there = Files.writeString(folder.resolve("there.bin"), "kept");
    CommandRun run = CommandRun.of("watch", "--port", port(), "--capture", there.toString(), JOB);
    fails(run, 6, "there.bin", "is there already");
    assertThat(there).hasContent("kept");
  }

  @Test
  void theCommandLineIsChecked() {
    assertThat(CommandRun.of("watch", JOB).status()).isEqualTo(2);
    assertThat(CommandRun.of("watch", "--port", port()).status()).isEqualTo(2);
    CommandRun rate = CommandRun.of("watch", "--port", port(), "--rate", "-1", JOB);
    assertThat(rate.status()).isEqualTo(2);
    assertThat(CommandRun.of("watch", "--port", port(), "--drive", "wind", JOB).status())
        .isEqualTo(2);
  }

  @Test
  void helpFitsTheScreen() {
    CommandRun run = CommandRun.of("watch", "--help");
    assertThat(run.answers()).contains("c closed stop", "--capture", "--reference");
    assertThat(run.answers().lines()).allMatch(line -> line.length() <= 80);
  }
}
