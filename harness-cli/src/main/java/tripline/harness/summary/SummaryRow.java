package tripline.harness.summary;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** An actuator as a row for data tools: the same keys in CSV and in newline-delimited JSON. */
final class SummaryRow {
  private static final MathContext DIGITS = new MathContext(9);

  private SummaryRow() {}

  /** Values are text, whole numbers, decimals or null; keys always in the same order. */
  static Map<String, @Nullable Object> of(Actuator actuator) {
    ResultLine latest = actuator.latest();
    Map<String, @Nullable Object> row = new LinkedHashMap<>();
    row.put("tag", actuator.tag());
    row.put("decision", latest.decision().name().toLowerCase(Locale.ROOT));
    row.put("file", latest.file());
    row.put("when", latest.when().toString());
    figure(row, "backoff_closed", latest.closed());
    figure(row, "backoff_open", latest.open());
    figure(row, "margin_closed", latest.marginClosed());
    figure(row, "margin_open", latest.marginOpen());
    row.put("worst_finding", latest.worst());
    row.put("faults", latest.faults());
    row.put("cautions", latest.cautions());
    row.put("results", actuator.results().size());
    row.put("history", actuator.history());
    figure(row, "backoff_closed_change", actuator.change(ResultLine::closed));
    figure(row, "backoff_open_change", actuator.change(ResultLine::open));
    figure(row, "margin_change", actuator.change(ResultLine::margin));
    return row;
  }

  private static void figure(
      Map<String, @Nullable Object> row, String key, @Nullable Figure figure) {
    row.put(key, figure == null ? null : decimal(figure.value()));
    row.put(key + "_u", figure == null ? null : decimal(figure.u()));
  }

  private static BigDecimal decimal(double value) {
    BigDecimal rounded = new BigDecimal(value).round(DIGITS).stripTrailingZeros();
    return rounded.scale() < 0 ? rounded.setScale(0) : rounded;
  }
}
