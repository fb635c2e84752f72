package tripline.harness.summary;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tripline.harness.report.SafeText;

/** The summary for data tools. */
public final class SummaryData {
  private SummaryData() {}

  /**
   * CSV (RFC 4180, UTF-8, one header line). A text that a spreadsheet would take for a formula gets
   * an apostrophe in front.
   */
  public static void csv(Summary summary, Writer out) throws IOException {
    boolean first = true;
    for (Actuator actuator : summary.actuators()) {
      Map<String, @Nullable Object> row = SummaryRow.of(actuator);
      if (first) {
        out.write(String.join(",", row.keySet()) + "\r\n");
        first = false;
      }
      out.write(
          row.values().stream().map(SummaryData::cell).collect(Collectors.joining(",")) + "\r\n");
    }
  }

  private static String cell(@Nullable Object value) {
    if (value == null) {
      return "";
    }
    if (value instanceof BigDecimal number) {
      return number.toPlainString();
    }
    String text = SafeText.line(value.toString());
    if (value instanceof String && !text.isEmpty() && "=+-@".indexOf(text.charAt(0)) >= 0) {
      text = "'" + text;
    }
    boolean quoted = text.contains(",") || text.contains("\"") || !text.equals(text.strip());
    return quoted ? '"' + text.replace("\"", "\"\"") + '"' : text;
  }

  /** One JSON object a line, UTF-8; absent figures are null. */
  public static void ndjson(Summary summary, Writer out) throws IOException {
    ObjectMapper mapper = new ObjectMapper();
    for (Actuator actuator : summary.actuators()) {
      out.write(mapper.writeValueAsString(SummaryRow.of(actuator)));
      out.write('\n');
    }
  }
}
