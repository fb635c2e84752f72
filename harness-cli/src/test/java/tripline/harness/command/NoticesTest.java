package tripline.harness.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;
import tripline.harness.report.Columns;

class NoticesTest {
  private static String said(String notice) {
    StringWriter errors = new StringWriter();
    PrintWriter out = new PrintWriter(errors);
    Notices.say(notice, out);
    out.flush();
    return errors.toString();
  }

  @Test
  void whatFitsTheScreenIsOneLine() {
    String notice = "a.csv: " + "x".repeat(73);
    assertThat(said(notice)).isEqualTo(notice + System.lineSeparator());
  }

  @Test
  void theRestIsSetInByTwo() {
    assertThat(said("閉側.csv: " + "word ".repeat(30)).lines())
        .hasSize(3)
        .allMatch(line -> Columns.width(line) <= 80)
        .first()
        .asString()
        .startsWith("閉側.csv: word");
    assertThat(said("a.csv: " + "word ".repeat(30)).lines().skip(1))
        .allMatch(line -> line.startsWith("  word"));
  }

  @Test
  void whatWouldSteerTheTerminalIsNotPassedOn() {
    assertThat(said("a\u001b[2J.csv: odd")).doesNotContain("\u001b");
  }
}
