package tripline.harness.rehearse.port;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tripline.RequiredProgram;
import tripline.harness.failure.LinkFailure;
import tripline.harness.serial.BaudRate;
import tripline.harness.serial.ByteLine;
import tripline.harness.serial.LineGone;
import tripline.harness.serial.SerialPorts;

/** Real pseudo terminals, opened by the real serial library. */
@Timeout(value = 60, unit = TimeUnit.SECONDS, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class PortMakerTest {
  @TempDir private Path folder;

  private static void need(PortMaker.Holder holder) {
    if (holder == PortMaker.Holder.PYTHON3) {
      RequiredProgram.need("python3");
    } else {
      RequiredProgram.need("socat", "-V");
    }
  }

  private PortMaker maker(PortMaker.Holder holder) {
    need(holder);
    return new PortMaker(folder.resolve("a port, of: mine"), List.of(holder));
  }

  private static String received(VirtualPort port, int length) {
    StringBuilder got = new StringBuilder();
    byte[] buffer = new byte[100];
    while (got.length() < length) {
      int n = port.read(buffer);
      got.append(new String(buffer, 0, n, StandardCharsets.ISO_8859_1));
      Thread.onSpinWait();
    }
    return got.toString();
  }

  private static String received(ByteLine line, int length) throws LineGone {
    StringBuilder got = new StringBuilder();
    byte[] buffer = new byte[100];
    while (got.length() < length) {
      got.append(new String(buffer, 0, line.read(buffer), StandardCharsets.ISO_8859_1));
    }
    return got.toString();
  }

  private ByteLine open() {
    return SerialPorts.open(folder.resolve("a port, of: mine").toString(), BaudRate.USUAL);
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  @ParameterizedTest
  @EnumSource(PortMaker.Holder.class)
  void everyByteGoesBothWaysUnchanged(PortMaker.Holder holder) throws LineGone {
    byte[] all = new byte[256];
    for (int i = 0; i < all.length; i++) {
      all[i] = (byte) i;
    }
    String text = new String(all, StandardCharsets.ISO_8859_1);
    try (VirtualPort port = maker(holder).make();
        ByteLine line = open()) {
      port.write(all, all.length);
      assertThat(received(line, all.length)).isEqualTo(text);
      line.write(all, all.length);
      assertThat(received(port, all.length)).isEqualTo(text);
    }
  }

  @ParameterizedTest
  @EnumSource(PortMaker.Holder.class)
  void hostsMayComeAndGo(PortMaker.Holder holder) throws LineGone {
    try (VirtualPort port = maker(holder).make()) {
      for (String word : List.of("one", "two", "three")) {
        try (ByteLine line = open()) {
          line.write(bytes(word), word.length());
          assertThat(received(port, word.length())).isEqualTo(word);
        }
        assertThat(port.alive()).isTrue();
      }
    }
  }

  @ParameterizedTest
  @EnumSource(PortMaker.Holder.class)
  void unpluggedItIsGoneAndComesBackUnderTheSameName(PortMaker.Holder holder) throws LineGone {
    PortMaker maker = maker(holder);
    VirtualPort first = maker.make();
    try (ByteLine line = open()) {
      first.close();
      assertThat(folder.resolve("a port, of: mine")).doesNotExist();
      assertThatThrownBy(() -> received(line, 1)).isInstanceOf(LineGone.class);
    }
    try (VirtualPort second = maker.make();
        ByteLine line = open()) {
      second.write(bytes("back"), 4);
      assertThat(received(line, 4)).isEqualTo("back");
    }
  }

  @Test
  void aHolderThatDiesIsNoticed() {
    need(PortMaker.Holder.SOCAT);
    VirtualPort port = maker(PortMaker.Holder.SOCAT).make();
    assertThat(port.alive()).isTrue();
    port.close();
    assertThat(port.alive()).isFalse();
    assertThat(port.room()).isZero();
  }

  @Test
  void whatIsThereAlreadyIsLeftAlone() throws IOException {
    PortMaker maker = maker(PortMaker.Holder.SOCAT);
    Path name = folder.resolve("a port, of: mine");
    Files.writeString(name, "mine");
    assertThatThrownBy(maker::make)
        .isInstanceOf(LinkFailure.class)
        .hasMessageContaining("is there already");
    assertThat(name).hasContent("mine");
    Files.delete(name);
    try (VirtualPort port = maker.make()) {
      assertThatThrownBy(maker::make)
          .isInstanceOf(LinkFailure.class)
          .hasMessageContaining("end the other rehearsal");
      assertThat(port.alive()).isTrue();
    }
  }

  @Test
  void theLinkThatAKilledRehearsalLeftIsReplaced() throws IOException {
    PortMaker maker = maker(PortMaker.Holder.SOCAT);
    Path name = folder.resolve("a port, of: mine");
    Files.createSymbolicLink(name, folder.resolve("gone"));
    try (VirtualPort port = maker.make()) {
      assertThat(port.alive()).isTrue();
    }
    assertThat(Files.exists(name, LinkOption.NOFOLLOW_LINKS)).isFalse();
  }

  @ParameterizedTest
  @EnumSource(PortMaker.Holder.class)
  void aPlaceThatCannotBeWrittenIsOneLine(PortMaker.Holder holder) {
    need(holder);
    PortMaker maker = new PortMaker(folder.resolve("no such folder/port"), List.of(holder));
    assertThatThrownBy(maker::make)
        .isInstanceOf(LinkFailure.class)
        .hasMessageStartingWith(folder.resolve("no such folder/port") + ": cannot be made by ")
        .hasMessageNotContaining("\n");
  }
}
