package tripline.harness.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Random;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DigestedFileTest {
  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 262_143, 262_144, 262_145, 524_288, 3_000_001})
  void theReaderGetsEveryByteAndTheDigestIsTheirs(int length) throws Exception {
    byte[] bytes = new byte[length];
    new Random(length).nextBytes(bytes);
    Path file = Files.write(folder.resolve("f"), bytes);
    ByteArrayOutputStream got = new ByteArrayOutputStream();
    assertThat(
            DigestedFile.read(
                    file,
                    (b, n) -> {
                      got.write(b, 0, n);
                      return true;
                    })
                .map(Supplier::get))
        .contains(HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes)));
    assertThat(got.toByteArray()).isEqualTo(bytes);
  }

  @Test
  void aReaderThatHasEnoughEndsIt() throws Exception {
    Path file = Files.write(folder.resolve("f"), new byte[2_000_000]);
    int[] calls = new int[1];
    assertThat(DigestedFile.read(file, (b, n) -> ++calls[0] < 3)).isEmpty();
    assertThat(calls[0]).isEqualTo(3);
  }

  @Test
  void aReaderThatFailsAndAFileThatIsMissingAreNotSwallowed() throws Exception {
    Path file = Files.write(folder.resolve("f"), new byte[2_000_000]);
    assertThatThrownBy(
            () ->
                DigestedFile.read(
                    file,
                    (b, n) -> {
                      throw new IllegalStateException("mine");
                    }))
        .hasMessage("mine");
    assertThatThrownBy(() -> DigestedFile.read(folder.resolve("none"), (b, n) -> true))
        .isInstanceOf(NoSuchFileException.class);
  }
}
