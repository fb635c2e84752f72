package tripline.harness.summary;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tripline.harness.report.SafeText;
import tripline.job.End;

/** An actuator as a row for data tools: the same keys in CSV and in newline-delimited JSON. */
final class SummaryRow {
  /** In the order of the columns; what ends in {@code _u} is a standard uncertainty. */
  static final List<String> KEYS =
      List.of(
          "tag",
          "decision",
          "file",
          "when",
          "backoff_closed",
          "backoff_closed_u",
          "backoff_open",
          "backoff_open_u",
          "margin_closed",
          "margin_closed_u",
          "margin_open",
          "margin_open_u",
          "worst_finding",
          "faults",
          "cautions",
          "results",
          "history",
          "backoff_closed_change",
          "backoff_closed_change_u",
          "backoff_open_change",
          "backoff_open_change_u",
          "margin_change",
          "margin_change_u",
          "adjustments",
          "closed_set_since",
          "open_set_since");

  private static final MathContext DIGITS = new MathContext(9);

  private final Map<String, @Nullable Object> row = new LinkedHashMap<>();

  private SummaryRow() {
    KEYS.forEach(key -> row.put(key, null));
  }

  /** Values are text made harmless, whole numbers, decimals or null; keys are {@link #KEYS}. */
  static Map<String, @Nullable Object> of(Actuator actuator) {
    SummaryRow made = new SummaryRow();
    made.fill(actuator, actuator.latest());
    return made.row;
  }

  private void fill(Actuator actuator, ResultLine latest) {
    text("tag", actuator.tag());
    text("decision", latest.decision().name().toLowerCase(Locale.ROOT));
    text("file", latest.file());
    text("when", latest.when().toString());
    figure("backoff_closed", latest.closed().backoff());
    figure("backoff_open", latest.open().backoff());
    figure("margin_closed", latest.closed().margin());
    figure("margin_open", latest.open().margin());
    text("worst_finding", latest.worst());
    put("faults", latest.faults());
    put("cautions", latest.cautions());
    put("results", actuator.results().size());
    text("history", actuator.history());
    figure("backoff_closed_change", actuator.backoffChange(End.CLOSED));
    figure("backoff_open_change", actuator.backoffChange(End.OPEN));
    figure("margin_change", actuator.marginChange());
    put("adjustments", actuator.adjustments());
    text("closed_set_since", actuator.setSince(End.CLOSED).toString());
    text("open_set_since", actuator.setSince(End.OPEN).toString());
  }

  private void put(String key, @Nullable Object value) {
    if (!row.containsKey(key)) {
      throw new IllegalArgumentException("no column " + key);
    }
    row.put(key, value);
  }

  private void text(String key, @Nullable String text) {
    put(key, text == null ? null : SafeText.line(text));
  }

  private void figure(String key, @Nullable Figure figure) {
    put(key, figure == null ? null : decimal(figure.value()));
    put(key + "_u", figure == null ? null : decimal(figure.u()));
  }

  private static BigDecimal decimal(double value) {
    BigDecimal rounded = new BigDecimal(value).round(DIGITS).stripTrailingZeros();
    return rounded.scale() < 0 ? rounded.setScale(0) : rounded;
  }
}
