package tripline.harness.report.record;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tripline.harness.report.SafeText;

/** What a template is filled with; text is made harmless as it comes in. */
final class Fields {
  private final Map<String, Object> values = new LinkedHashMap<>();

  /** Text, escaped by the template. */
  Fields text(String key, String text) {
    values.put(key, SafeText.line(text));
    return this;
  }

  /** Text whose section is left out where there is none. */
  Fields some(String key, Optional<String> text) {
    values.put(key, text.filter(t -> !t.isBlank()).<Object>map(SafeText::line).orElse(false));
    return this;
  }

  /** Markup of our own making. */
  Fields markup(String key, String markup) {
    values.put(key, markup);
    return this;
  }

  Fields flag(String key, boolean set) {
    values.put(key, set);
    return this;
  }

  /** Lines of text, each under the same key within the section. */
  Fields lines(String section, String key, List<String> lines) {
    return list(section, lines.stream().map(l -> new Fields().text(key, l)).toList());
  }

  Fields list(String section, List<Fields> rows) {
    values.put(section, rows.stream().map(Fields::map).toList());
    return this;
  }

  Map<String, Object> map() {
    return values;
  }
}
