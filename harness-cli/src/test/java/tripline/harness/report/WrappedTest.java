package tripline.harness.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

class WrappedTest {
  @Test
  void whatFitsIsOneLine() {
    assertThat(Wrapped.lines("  as it is", 10, "    ")).containsExactly("  as it is");
    assertThat(Wrapped.lines("", 10, "    ")).containsExactly("");
  }

  @Test
  void linesAfterTheFirstBeginWithTheIndent() {
    assertThat(Wrapped.lines("  one two three four", 11, "    "))
        .containsExactly("  one two", "    three", "    four");
  }

  @Test
  void aFigureKeepsItsPerCentSign() {
    assertThat(Wrapped.lines("at most 50 % of it", 11, ""))
        .containsExactly("at most", "50 % of it");
  }

  @Test
  void aLongerWordStaysWhole() {
    assertThat(Wrapped.lines("see /a/very/long/path here", 8, "  "))
        .containsExactly("see", "  /a/very/long/path", "  here");
  }

  @Test
  void wideCharactersCountTwice() {
    assertThat(Wrapped.lines("閉側 開側 x", 9, "")).containsExactly("閉側 開側", "x");
    assertThat(Wrapped.lines("閉側 開側 x", 8, "")).containsExactly("閉側", "開側 x");
  }

  @Test
  void nothingIsLostAndNoLineIsTooWideUnlessOneWordIs() {
    Random random = new Random(11);
    for (int round = 0; round < 2_000; round++) {
      StringBuilder text = new StringBuilder("w");
      int words = random.nextInt(30);
      for (int i = 0; i < words; i++) {
        text.append(" ".repeat(random.nextInt(20) == 0 ? 2 : 1));
        text.append("abcdefghijklmnop", 0, 1 + random.nextInt(15));
      }
      int columns = 10 + random.nextInt(40);
      String all = text.toString();
      var lines = Wrapped.lines(all, columns, "  ");
      assertThat(String.join(" ", lines).replaceAll(" +", " "))
          .isEqualTo(all.replaceAll(" +", " "));
      assertThat(lines).allMatch(l -> Columns.width(l) <= columns || !l.strip().contains(" "), all);
    }
  }
}
