package tripline.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tripline.sample.Channels;

class CsvLayoutTest {
  @ParameterizedTest
  @ValueSource(chars = {'"', '\n', '\r', '\0', '#', '+', '-', '0', 'e', 'ä'})
  void aSeparatorMustNotBePartOfACell(char separator) {
    assertThatThrownBy(() -> layout(separator, '.', "time", "position", "1", "0"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("separator");
  }

  @ParameterizedTest
  @ValueSource(chars = {',', ';', '\t', '|', ' '})
  void usualSeparatorsAreTaken(char separator) {
    CsvLayout layout = layout(separator, '.', "time", "position", "1", "0");
    String text = "time,position,k1\n0,1.5,1\n".replace(',', separator);
    assertThat(Calls.of(layout, text, "k1").said).contains("0 1.5 1 1");
  }

  @Test
  void aDecimalCommaBetweenCommasWorksWhereNumbersAreQuoted() {
    CsvLayout layout = layout(',', ',', "time", "position", "1", "0");
    assertThat(Calls.of(layout, "time,position,k1\n\"0,5\",\"1,5\",1\n2,3,0\n", "k1").said)
        .contains("500000000 1.5 1 1", "2000000000 3.0 1 0");
  }

  @Test
  void whatCannotBeALayoutIsRefused() {
    assertRefused(() -> layout(',', ';', "time", "position", "1", "0"), "decimal");
    assertRefused(() -> layout(',', '.', " ", "position", "1", "0"), "empty");
    assertRefused(() -> layout(',', '.', "x", "x", "1", "0"), "three columns");
    assertRefused(() -> layout(',', '.', "mark", "x", "1", "0"), "three columns");
    assertRefused(() -> layout(',', '.', "time", "x", "on", "ON"), "both closed and open");
    assertRefused(() -> layout(',', '.', "time", "x", "", "0"), "empty word");
    CsvLayout d = CsvLayout.DEFAULT;
    assertRefused(
        () ->
            new CsvLayout(',', '.', "t", CsvTimeUnit.S, "x", List.of(), d.open(), Optional.empty()),
        "no word");
  }

  @Test
  void aChannelMustNotBeTheTime() {
    CsvRequest request = CsvRequest.all(new Channels(List.of("time")));
    assertRefused(() -> new CsvReader(CsvLayout.DEFAULT, request, new Calls()), "'time'");
    assertRefused(() -> new CsvRequest(new Channels(List.of("k1")), Set.of("t1")), "'t1'");
  }

  @Test
  void unitsByTheirWord() {
    for (CsvTimeUnit unit : CsvTimeUnit.values()) {
      assertThat(CsvTimeUnit.of(unit.word())).contains(unit);
    }
    assertThat(CsvTimeUnit.of("min")).isEmpty();
  }

  private static void assertRefused(Runnable made, String says) {
    assertThatThrownBy(made::run)
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining(says);
  }

  private static CsvLayout layout(
      char separator, char decimal, String time, String position, String closed, String open) {
    return new CsvLayout(
        separator,
        decimal,
        time,
        CsvTimeUnit.S,
        position,
        List.of(closed),
        List.of(open),
        Optional.empty());
  }
}
