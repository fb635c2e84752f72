package tripline.harness;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is printed of a seal speaks of the seal, never of the valve. */
class VerifySealTest {
  @TempDir private Path folder;
  private String key;
  private Path job;
  private Path recording;
  private Path result;
  private Path record;

  /** A valve whose cam is out of place: its result is a rejection. */
  @BeforeEach
  void aRejectedResultUnderSeal() throws IOException {
    key = folder.resolve("seal.key").toString();
    job = Files.copy(Path.of("src/test/resources/sheets/hand.toml"), folder.resolve("job.toml"));
    recording =
        Files.writeString(folder.resolve("hand.csv"), HandStrokes.RIGHT.closedBackoff(1.2).csv());
    result = folder.resolve("result.json");
    record = folder.resolve("record.html");
    assertThat(
            CommandRun.of(
                    "check",
                    job.toString(),
                    recording.toString(),
                    "--quiet",
                    "--json",
                    result.toString(),
                    "--report",
                    record.toString())
                .status())
        .isEqualTo(1);
    CommandRun sealed = CommandRun.of("seal", "--key", key, result.toString(), record.toString());
    assertThat(sealed.status()).as(sealed.errors()).isZero();
  }

  private CommandRun verify(String... more) {
    String[] line = new String[more.length + 2];
    line[0] = "verify-seal";
    line[1] = result.toString();
    System.arraycopy(more, 0, line, 2, more.length);
    return CommandRun.of(line);
  }

  @Test
  void theSealOfARejectedResultIsIntactAndNotAccepted() {
    CommandRun run = verify("--key", key);
    assertThat(run.status()).isZero();
    assertThat(run.answers().lines().reduce((a, b) -> b).orElseThrow())
        .startsWith("INTACT: unchanged since it was sealed ")
        .endsWith(", this user's");
    assertThat(run.answers()).doesNotContain("ACCEPTED");
  }

  @Test
  void oneByteOfAnythingBreaksItAndIsNamed() throws IOException {
    for (Path file : List.of(job, recording, result, record)) {
      byte[] whole = Files.readAllBytes(file);
      byte[] touched = whole.clone();
      touched[touched.length / 3] ^= 1;
      Files.write(file, touched);
      CommandRun run = verify("--key", key);
      assertThat(run.status()).as(file.toString()).isEqualTo(1);
      assertThat(run.answers().lines().filter(line -> line.startsWith("CHANGED")))
          .singleElement()
          .asString()
          .endsWith(" " + file.getFileName());
      assertThat(run.answers()).contains("\nBROKEN: not as it was when sealed ");
      Files.write(file, whole);
    }
  }

  @Test
  void ofARenamedFileItIsSaidWhatHelps() throws IOException {
    Path renamed = Files.move(result, folder.resolve("left.json"));
    CommandRun run = CommandRun.of("verify-seal", "--key", key, renamed.toString());
    assertThat(run.status()).isEqualTo(4);
    assertThat(run.errors())
        .isEqualTo(
            renamed
                + ": has no left.json.seal beside it, expected the seal itself to be named where"
                + " the file was renamed or moved"
                + System.lineSeparator());
    CommandRun helps =
        CommandRun.of("verify-seal", "--key", key, folder.resolve("result.json.seal").toString());
    assertThat(helps.status()).isEqualTo(1);
    assertThat(helps.answers()).contains("MISSING    result     result.json");
  }

  @Test
  void aSealWithOneWordChangedIsBroken() throws IOException {
    Path seal = folder.resolve("result.json.seal");
    Files.writeString(seal, Files.readString(seal).replaceFirst("record.html", "record.htm1"));
    CommandRun run = verify("--key", key);
    assertThat(run.status()).isEqualTo(1);
    assertThat(run.answers())
        .endsWith(
            "BROKEN: the seal itself was changed after it was signed" + System.lineSeparator());
  }

  @Test
  void anotherSignerThanExpectedBreaksItAndAnUnknownOneLeavesItUndecided() {
    String other = folder.resolve("other.key").toString();
    CommandRun unknown = verify("--key", other);
    assertThat(unknown.status()).isEqualTo(3);
    assertThat(unknown.answers()).contains("\nUNDECIDED: unchanged since it was sealed ");
    CommandRun wrong = verify("--key", key, "--signer", "0000-0000");
    assertThat(wrong.status()).isEqualTo(1);
    assertThat(wrong.answers()).contains("\nBROKEN: sealed ").contains(", expected 0000-0000");
  }
}
