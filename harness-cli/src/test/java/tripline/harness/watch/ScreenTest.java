package tripline.harness.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tripline.harness.report.Glyphs;
import tripline.harness.terminal.TerminalSize;

/** What a terminal shows is the frame, with one write a frame and nothing cleared on the way. */
class ScreenTest {
  private static final TerminalSize SIZE = new TerminalSize(30, 8);
  private static final List<Look> LOOKS = List.of(Look.values());
  private final TinyTerminal terminal = new TinyTerminal(SIZE);
  private final Screen screen = new Screen(terminal, StandardCharsets.UTF_8, Look.Colour.YES);

  private static Frame frame(Random random, int rows) {
    List<Line> lines = new ArrayList<>();
    for (int i = 0; i < rows; i++) {
      Line line = Line.of("line " + random.nextInt(3), LOOKS.get(random.nextInt(LOOKS.size())));
      lines.add(line.and(" 0.5° ┃●┃").fit(SIZE.columns(), Glyphs.UNICODE));
    }
    return new Frame(lines);
  }

  @Test
  void showsTheFrameInOneWrite() throws IOException {
    Random random = new Random(4);
    for (int k = 0; k < 200; k++) {
      Frame frame = frame(random, SIZE.rows());
      int before = terminal.writes.size();
      screen.draw(frame);
      assertThat(terminal.shown()).isEqualTo(frame.lines().stream().map(Line::text).toList());
      assertThat(terminal.writes.size() - before).isLessThanOrEqualTo(1);
    }
    assertThat(terminal.clears).as("cleared when it was opened, and never again").isEqualTo(1);
  }

  @Test
  void writesNothingWhereNothingChanged() throws IOException {
    Frame frame = frame(new Random(5), SIZE.rows());
    screen.draw(frame);
    int before = terminal.writes.size();
    screen.draw(new Frame(frame.lines()));
    assertThat(terminal.writes).hasSize(before);
    List<Line> lines = new ArrayList<>(frame.lines());
    lines.set(3, Line.of("other").fit(SIZE.columns(), Glyphs.UNICODE));
    screen.draw(new Frame(lines));
    assertThat(terminal.writes.get(before)).startsWith("\u001b[4;1H").hasSizeLessThan(60);
    screen.forget();
    screen.draw(new Frame(lines));
    assertThat(terminal.writes.get(before + 1)).contains("\u001b[1;1H", "\u001b[8;1H");
  }

  @Test
  void aSmallerFrameLeavesNothingBelow() throws IOException {
    screen.draw(frame(new Random(6), SIZE.rows()));
    screen.draw(frame(new Random(6), 3));
    assertThat(terminal.shown().subList(3, SIZE.rows())).allMatch(String::isBlank);
  }

  @Test
  void givesTheTerminalBackAsItWas() throws IOException {
    screen.close();
    assertThat(terminal.writes).as("never opened").isEmpty();
    screen.draw(frame(new Random(7), SIZE.rows()));
    assertThat(terminal.modes).containsExactly(1049);
    screen.close();
    screen.close();
    assertThat(terminal.modes).containsExactly(7, 25);
    assertThat(terminal.writes).hasSize(2);
  }

  @Test
  void withoutColourWeightAndBarsRemain() throws IOException {
    Screen plain = new Screen(terminal, StandardCharsets.UTF_8, Look.Colour.NO);
    List<Line> lines = new ArrayList<>();
    for (Look look : Look.values()) {
      lines.add(Line.of(look.name(), look).fit(SIZE.columns(), Glyphs.UNICODE));
    }
    plain.draw(new Frame(lines));
    assertThat(terminal.writes.get(0))
        .contains("\u001b[1mACCENT", "\u001b[7mBAR", "\u001b[1mSTRONG")
        .doesNotContain("36m");
  }
}
