package tripline.csv;

import static org.assertj.core.api.Assertions.assertThat;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The rows of random recordings, against FastCSV for the cells and the JDK for what they mean. */
class FastCsvTest {
  @Test
  void readsWhatFastCsvAndParseDoubleRead() {
    int rows = 0;
    for (int seed = 1000; seed < 1250; seed++) {
      RandomRecording recording = new RandomRecording(seed);
      List<String> want = byFastCsv(recording);
      Calls calls = Calls.of(recording.layout, recording.bytes(), recording.channels);
      assertThat(calls.fault).isEmpty();
      assertThat(
              calls.said.stream().filter(s -> Character.isDigit(s.charAt(0)) || s.charAt(0) == '-'))
          .as("seed %d", seed)
          .filteredOn(s -> !s.contains("'"))
          .containsExactlyElementsOf(want);
      rows += want.size();
    }
    assertThat(rows).isGreaterThan(15_000);
  }

  private static List<String> byFastCsv(RandomRecording recording) {
    String text = recording.toString();
    List<String> rows = new ArrayList<>();
    try (Stream<CsvRecord> records =
        de.siegmar.fastcsv.reader.CsvReader.builder()
            .fieldSeparator(recording.layout.separator())
            .commentStrategy(CommentStrategy.SKIP)
            .allowUnclosedQuote(false)
            .ofCsvRecord(text.startsWith("\uFEFF") ? text.substring(1) : text)
            .stream()) {
      records.skip(1).forEach(record -> rows.add(row(recording, record.getFields())));
    }
    return rows;
  }

  private static String row(RandomRecording recording, List<String> cells) {
    List<String> columns = recording.columns;
    CsvLayout layout = recording.layout;
    String time = cells.get(columns.indexOf(layout.time())).replace(layout.decimal(), '.');
    String position = cells.get(columns.indexOf("position")).replace(layout.decimal(), '.');
    long known = 0;
    long closed = 0;
    for (int i = 0; i < recording.channels.length; i++) {
      String cell = cells.get(columns.indexOf(recording.channels[i])).strip();
      known |= cell.isEmpty() ? 0 : 1L << i;
      closed |= means(layout.closed(), cell) ? 1L << i : 0;
    }
    double reading = position.isEmpty() ? Double.NaN : Double.parseDouble(position);
    return Calls.row(nanos(layout.timeUnit(), time), reading, known, closed);
  }

  private static boolean means(List<String> words, String cell) {
    return words.stream()
        .anyMatch(w -> w.toLowerCase(Locale.ROOT).equals(cell.toLowerCase(Locale.ROOT)));
  }

  private static long nanos(CsvTimeUnit unit, String time) {
    if (unit == CsvTimeUnit.ISO) {
      Instant instant = Instant.parse(time);
      return instant.getEpochSecond() * 1_000_000_000L + instant.getNano();
    }
    return new BigDecimal(time)
        .scaleByPowerOfTen(unit.decimalsToNs())
        .setScale(0, RoundingMode.HALF_UP)
        .longValueExact();
  }
}
