package tripline.harness;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ConformTest {
  @TempDir private Path folder;

  @Test
  void aPortThatIsNotThereIsStatus5() {
    CommandRun run = CommandRun.of("conform", "--port", folder.resolve("none").toString());
    assertThat(run.status()).isEqualTo(5);
    assertThat(run.answers()).isEmpty();
    assertThat(run.errors().lines()).hasSize(1);
  }

  @Test
  void withoutAPortOrWithARateOfNoHardwareTheCommandLineIsWrong() {
    assertThat(CommandRun.of("conform").status()).isEqualTo(2);
    CommandRun run = CommandRun.of("conform", "--port", "x", "--baud", "115000");
    assertThat(run.status()).isEqualTo(2);
    assertThat(run.errors()).contains("the nearest is 115200");
  }

  @Test
  void helpSaysWhatTheStatusesMeanHere() {
    CommandRun run = CommandRun.of("conform", "--help");
    assertThat(run.answers()).contains("a duty fails", "not seen", "--power-cycle");
    assertThat(run.answers().lines()).allMatch(line -> line.length() <= 80);
  }
}
