package tripline.harness.serial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tripline.harness.failure.LinkFailure;

/** The library over a real pseudo terminal. */
@Timeout(value = 60, unit = TimeUnit.SECONDS, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class SerialLineTest {
  private static ByteLine open(Pty pty) {
    return SerialPorts.open(pty.path(), BaudRate.USUAL);
  }

  private static byte[] read(ByteLine line, int length) throws LineGone {
    byte[] all = new byte[length];
    byte[] some = new byte[8192];
    int at = 0;
    while (at < length) {
      int got = line.read(some);
      System.arraycopy(some, 0, all, at, got);
      at += got;
    }
    return all;
  }

  @Test
  void everyByteValueArrivesBothWaysUnchanged() throws Exception {
    byte[] all = new byte[3 * 256];
    for (int i = 0; i < all.length; i++) {
      all[i] = (byte) i;
    }
    try (Pty pty = Pty.open();
        ByteLine line = open(pty)) {
      pty.write(all);
      assertThat(read(line, all.length)).isEqualTo(all);
      line.write(all, all.length);
      byte[] seen = new byte[all.length + 1];
      byte[] some = new byte[all.length];
      int at = 0;
      while (at < all.length) {
        int got = pty.read(some, 5_000);
        System.arraycopy(some, 0, seen, at, got);
        at += got;
      }
      assertThat(Arrays.copyOf(seen, at)).isEqualTo(all);
    }
  }

  @Test
  void megabytesArriveUnchanged() throws Exception {
    byte[] sent = new byte[4 << 20];
    new Random(1).nextBytes(sent);
    try (Pty pty = Pty.open();
        ByteLine line = open(pty)) {
      CompletableFuture<Void> writer = CompletableFuture.runAsync(() -> writeAll(pty, sent));
      assertThat(Arrays.equals(read(line, sent.length), sent)).isTrue();
      writer.get();
    }
  }

  private static void writeAll(Pty pty, byte[] bytes) {
    try {
      pty.write(bytes);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  void nothingYetIsNoBytes() throws Exception {
    try (Pty pty = Pty.open();
        ByteLine line = open(pty)) {
      assertThat(line.read(new byte[10])).isZero();
      pty.write("x");
      assertThat(line.read(new byte[10])).isEqualTo(1);
    }
  }

  @Test
  void anUnpluggedLineIsGoneAndStaysGone() throws Exception {
    Pty pty = Pty.open();
    try (ByteLine line = open(pty)) {
      pty.close();
      for (int i = 0; i < 3; i++) {
        assertThatThrownBy(() -> line.read(new byte[10]))
            .isInstanceOfSatisfying(
                LineGone.class, g -> assertThat(g.what()).isEqualTo("unplugged"));
      }
    }
  }

  @Test
  void closingEndsAReadAtOnce() throws Exception {
    try (Pty pty = Pty.open()) {
      ByteLine line = open(pty);
      CompletableFuture<Integer> reader =
          CompletableFuture.supplyAsync(
              () -> {
                try {
                  int reads = 0;
                  while (true) {
                    reads += line.read(new byte[10]) + 1;
                  }
                } catch (LineGone e) {
                  return e.what().length();
                }
              });
      line.close();
      line.close();
      assertThat(reader.get()).isEqualTo("closed".length());
      assertThatThrownBy(() -> line.write(new byte[1], 1)).isInstanceOf(LineGone.class);
    }
  }

  @Test
  void aDeviceThatTakesNothingIsGivenUp() throws Exception {
    try (Pty pty = Pty.open();
        ByteLine line = open(pty)) {
      assertThatThrownBy(
              () -> {
                for (int i = 0; i < 1_000_000; i++) {
                  line.write(new byte[4096], 4096);
                }
              })
          .isInstanceOf(LineGone.class)
          .hasMessage("takes no bytes");
    }
  }

  @Test
  void aPortCanBeLeftAndOpenedAgain() throws Exception {
    try (Pty pty = Pty.open()) {
      for (int i = 0; i < 3; i++) {
        try (ByteLine line = open(pty)) {
          pty.write("again");
          assertThat(read(line, 5)).isEqualTo("again".getBytes(StandardCharsets.US_ASCII));
        }
      }
    }
  }

  @Test
  void aReachFollowsTheNameToTheDeviceThatHasItNow(@TempDir Path folder) throws Exception {
    Path link = folder.resolve("logger");
    Pty first = Pty.open(link);
    Reach reach = SerialPorts.to(link.toString(), BaudRate.USUAL);
    ByteLine line = reach.open();
    first.close();
    assertThatThrownBy(() -> read(line, 1)).isInstanceOf(LineGone.class);
    line.close();
    assertThatThrownBy(reach::open).isInstanceOf(LinkFailure.class);
    try (Pty second = Pty.open(link);
        ByteLine next = reach.open()) {
      second.write("back");
      assertThat(read(next, 4)).hasSize(4);
      assertThat(next.name()).isEqualTo(link.toString());
    }
  }

  @Test
  void whatCannotBeOpenedSaysWhyOnOneLine(@TempDir Path folder) throws Exception {
    Path file = Files.writeString(folder.resolve("file"), "no terminal");
    try (Pty pty = Pty.open();
        ByteLine line = open(pty)) {
      assertThat(line.name()).isEqualTo(pty.path());
      assertThatThrownBy(() -> open(pty))
          .isInstanceOf(LinkFailure.class)
          .hasMessage(pty.path() + ": is open already, or was unplugged just now");
    }
    assertThatThrownBy(() -> SerialPorts.open(file.toString(), BaudRate.USUAL))
        .isInstanceOf(LinkFailure.class)
        .hasMessage(file + ": is no serial port");
    for (String missing : new String[] {folder.resolve("tty").toString(), "ttyNONE77"}) {
      assertThatThrownBy(() -> SerialPorts.open(missing, BaudRate.USUAL))
          .isInstanceOf(LinkFailure.class)
          .hasMessageStartingWith(missing + ": no such port");
    }
    assertThatThrownBy(() -> SerialPorts.open(folder.toString(), BaudRate.USUAL))
        .isInstanceOf(LinkFailure.class)
        .hasMessage(folder + ": is no serial port");
    // errno.h of Linux: the lock of another process, permission.
    assertThat(OpenError.ofUnix(11)).isEqualTo("is in use by another program");
    assertThat(OpenError.ofUnix(13)).startsWith("may not be opened");
    assertThat(OpenError.ofUnix(99)).contains("error 99");
    assertThat(OpenError.ofWindows(5)).startsWith("is in use by another program");
  }

  @Test
  void aMistypedBaudRateNamesTheNearest() {
    assertThatThrownBy(() -> new BaudRate(11520))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("11520 is no usual baud rate; the nearest is 9600");
    assertThat(BaudRate.KNOWN).isSorted().contains(BaudRate.USUAL.bitsPerSecond());
  }

  @Test
  void portsPresentAreListed() {
    assertThat(SerialPorts.present())
        .allSatisfy(port -> assertThat(port.path()).isNotBlank())
        .isSortedAccordingTo(java.util.Comparator.comparing(PresentPort::path));
  }
}
