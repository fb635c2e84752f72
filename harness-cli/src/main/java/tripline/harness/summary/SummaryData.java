package tripline.harness.summary;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The summary for data tools. */
public final class SummaryData {
  private SummaryData() {}

  /**
   * CSV (RFC 4180, UTF-8, one header line, with no actuator as well). A text that a spreadsheet
   * would take for a formula gets an apostrophe in front.
   */
  public static void csv(Summary summary, Writer out) throws IOException {
    out.write(String.join(",", SummaryRow.KEYS) + "\r\n");
    for (Actuator actuator : summary.actuators()) {
      out.write(
          SummaryRow.of(actuator).values().stream()
                  .map(SummaryData::cell)
                  .collect(Collectors.joining(","))
              + "\r\n");
    }
  }

  private static String cell(@Nullable Object value) {
    if (value == null) {
      return "";
    }
    if (value instanceof BigDecimal number) {
      return number.toPlainString();
    }
    String text = value.toString();
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
