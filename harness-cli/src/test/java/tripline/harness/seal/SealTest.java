package tripline.harness.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tripline.harness.failure.InputFailure;
import tripline.harness.seal.SealCheck.State;

class SealTest {
  private static final Instant NOON = Instant.parse("2026-03-02T12:00:00Z");

  @TempDir private Path folder;
  private Path key;
  private Path result;
  private Path record;
  private Path sheet;
  private Path recording;
  private Path before;

  @BeforeEach
  void files() throws IOException {
    key = folder.resolve("settings/tripline/seal.key");
    sheet = Files.writeString(folder.resolve("job.toml"), "[job]\ntag = \"CW-114\"\n");
    recording = Files.writeString(folder.resolve("hand 100%.csv"), "time,position\n0,1\n");
    record = Files.writeString(folder.resolve("record.html"), "<p>ACCEPTED</p>");
    before = Files.writeString(folder.resolve("before.json"), "{\"format\": 1}\n");
    result = folder.resolve("result.json");
    Files.writeString(
        result,
        """
        {"format": 1, "job": {"tag": "CW-114", "file": "elsewhere/job.toml", "sha256": "%s"},
         "reference": {"file": "elsewhere/before.json", "sha256": "%s"},
         "recordings": [{"file": "elsewhere/hand 100%%.csv", "sha256": "%s", "strokes": [{"number": 0}]}],
         "cams": [{"file": "no input"}]}
        """
            .formatted(
                Digest.of(sheet).sha256(),
                Digest.of(before).sha256(),
                Digest.of(recording).sha256()));
  }

  @Test
  void aDigestIsAsPublished() throws IOException {
    // FIPS 180-4 example: SHA-256 of "abc".
    Path abc = Files.writeString(folder.resolve("abc"), "abc");
    assertThat(Digest.of(abc))
        .isEqualTo(
            new Digest("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", 3));
  }

  @Test
  void namesEveryInputAndFindsEverythingUnchanged() {
    SealKey signer = SealKey.atOrNew(key);
    assertThat(Sealing.seal(List.of(result, record), signer, NOON))
        .extracting(SealedFile::role, SealedFile::path)
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple("result", "result.json"),
            org.assertj.core.groups.Tuple.tuple("job", "job.toml"),
            org.assertj.core.groups.Tuple.tuple("reference", "before.json"),
            org.assertj.core.groups.Tuple.tuple("recording", "hand 100%.csv"),
            org.assertj.core.groups.Tuple.tuple("record", "record.html"));
    SealCheck check = SealCheck.of(result);
    assertThat(check.isIntact()).isTrue();
    assertThat(check.sealed()).isEqualTo(NOON);
    assertThat(check.fingerprint()).isEqualTo(signer.fingerprint());
    assertThat(SealCheck.of(folder.resolve("result.json.seal")).isIntact()).isTrue();
  }

  @Test
  void tellsWhichFileHasOneByteChanged() throws IOException {
    Sealing.seal(List.of(result, record), SealKey.atOrNew(key), NOON);
    for (Path file : List.of(result, record, sheet, recording, before)) {
      byte[] whole = Files.readAllBytes(file);
      byte[] touched = whole.clone();
      touched[touched.length / 2] ^= 1;
      Files.write(file, touched);
      SealCheck check = SealCheck.of(folder.resolve("result.json.seal"));
      assertThat(check.isIntact()).isFalse();
      assertThat(check.files())
          .filteredOn(f -> f.state() != State.UNCHANGED)
          .singleElement()
          .satisfies(
              f -> {
                assertThat(f.state()).isEqualTo(State.CHANGED);
                assertThat(f.file().path()).isEqualTo(file.getFileName().toString());
              });
      Files.write(file, whole);
    }
    Files.delete(recording);
    assertThat(SealCheck.of(result).files()).anyMatch(f -> f.state() == State.MISSING);
  }

  @Test
  void aSealWithAnyByteChangedIsNotGenuineOrNotASeal() throws IOException {
    Sealing.seal(List.of(record), SealKey.atOrNew(key), NOON);
    Path seal = folder.resolve("record.html.seal");
    byte[] whole = Files.readAllBytes(seal);
    Random random = new Random(20260302);
    for (int i = 0; i < whole.length; i++) {
      byte[] touched = whole.clone();
      touched[i] ^= (byte) (1 << random.nextInt(7));
      Files.write(seal, touched);
      boolean accepted;
      try {
        accepted = SealCheck.of(seal).isIntact();
      } catch (InputFailure refused) {
        accepted = false;
      }
      assertThat(accepted).as("byte " + i).isFalse();
    }
  }

  @Test
  void refusesToSealInputsThatAreNoLongerWhatTheResultWasMadeFrom() throws IOException {
    Files.writeString(sheet, "# another word\n");
    SealKey signer = SealKey.atOrNew(key);
    assertThatThrownBy(() -> Sealing.seal(List.of(result), signer, NOON))
        .isInstanceOf(InputFailure.class)
        .hasMessageContaining("elsewhere/job.toml: is not what")
        .hasMessageContaining("was made from");
    assertThat(folder.resolve("result.json.seal")).doesNotExist();
    assertThatThrownBy(() -> Sealing.seal(List.of(folder.resolve("none.pdf")), signer, NOON))
        .hasMessageContaining("no such file");
    Path broken = Files.writeString(folder.resolve("broken.json"), "{\"format\": 1,\n \"job\": [}");
    assertThatThrownBy(() -> Sealing.seal(List.of(broken), signer, NOON))
        .hasMessageContaining("broken.json:2:");
  }

  @Test
  void theKeyIsMadeOnceAndOnlyItsOwnerCanReadIt() throws IOException {
    String first = SealKey.atOrNew(key).fingerprint();
    assertThat(SealKey.atOrNew(key).fingerprint())
        .isEqualTo(first)
        .matches("([0-9a-f]{4}-){7}[0-9a-f]{4}");
    assertThat(SealKey.atOrNew(folder.resolve("other.key")).fingerprint()).isNotEqualTo(first);
    assumeTrue(key.getFileSystem().supportedFileAttributeViews().contains("posix"), "POSIX only");
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(key)))
        .isEqualTo("rw-------");
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(key.getParent())))
        .isEqualTo("rwx------");
    Files.setPosixFilePermissions(key, PosixFilePermissions.fromString("rw-r-----"));
    assertThatThrownBy(() -> SealKey.at(key))
        .isInstanceOf(InputFailure.class)
        .hasMessageContaining("others can read this key");
  }

  @Test
  void aFileThatIsNoKeyIsRefused() throws IOException {
    OwnersOnly.create(folder.resolve("no.key"), "hello");
    assertThatThrownBy(() -> SealKey.at(folder.resolve("no.key")))
        .hasMessageContaining("no PUBLIC KEY block");
    OwnersOnly.create(
        folder.resolve("bad.key"), "-----BEGIN PUBLIC KEY-----\nAAAA\n-----END PUBLIC KEY-----\n");
    assertThatThrownBy(() -> SealKey.at(folder.resolve("bad.key")))
        .hasMessageContaining("holds no Ed25519 key");
    assertThat(SealKey.at(folder.resolve("none.key"))).isEmpty();
  }

  @Test
  void theKeyLiesAmongTheUsersSettings() {
    assertThat(SealKey.usualPlace(Map.of(), "/home/jo"))
        .isEqualTo(Path.of("/home/jo/.config/tripline/seal.key"));
    assertThat(SealKey.usualPlace(Map.of("XDG_CONFIG_HOME", "/cfg"), "/home/jo"))
        .isEqualTo(Path.of("/cfg/tripline/seal.key"));
    assertThat(SealKey.usualPlace(Map.of("APPDATA", "/roaming"), "/home/jo"))
        .isEqualTo(Path.of("/roaming/tripline/seal.key"));
  }

  @Test
  void pathsWithLineBreaksStayOneLine() {
    SealKey signer = SealKey.atOrNew(key);
    SealedFile odd = new SealedFile("record", "a\nfile: 100%.html", 3, "ab".repeat(32));
    Seal seal = Seal.of(NOON, List.of(odd), signer);
    Seal again =
        Seal.parse(
            "s", new String(seal.text().getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8));
    assertThat(again.files()).containsExactly(odd);
    assertThat(again.isGenuine()).isTrue();
  }
}
