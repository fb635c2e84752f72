package tripline.harness.jobfile;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.tomlj.TomlArray;
import org.tomlj.TomlTable;
import tripline.job.NearestName;

/**
 * One table of a sheet. Every question asked of it makes a key known; {@link #close} reports the
 * keys nobody asked for. Answers are empty where the key is absent or its value cannot be used; the
 * latter has then been noted.
 */
final class Section {
  private final @Nullable TomlTable table;
  private final String path;
  private final Notes notes;
  private final Set<String> known = new LinkedHashSet<>();
  private final List<Missing> missing = new ArrayList<>();

  private record Missing(String key, String expected) {}

  /** A table at a path; an absent one has no keys. The path of the sheet itself is empty. */
  Section(@Nullable TomlTable table, String path, Notes notes) {
    this.table = table;
    this.path = path;
    this.notes = notes;
  }

  boolean isPresent() {
    return table != null;
  }

  boolean has(String key) {
    return raw(key) != null;
  }

  String path(String key) {
    return path.isEmpty() ? key : path + "." + key;
  }

  /** The key as messages name it: without the indexes of lists. */
  String name(String key) {
    return path(key).replaceAll("\\[\\d+]", "");
  }

  /** The section as messages name it. */
  String where() {
    return path.replaceAll("\\[\\d+]", "");
  }

  /** Says that a required key was not there; {@link #close} reports it. */
  void require(String key, String expected) {
    if (!has(key)) {
      missing.add(new Missing(key, expected));
      notes.unread(path(key));
    }
  }

  Optional<String> text(String key, TextRule rule) {
    Object value = raw(key);
    if (value == null) {
      return Optional.empty();
    }
    if (value instanceof String text) {
      Optional<String> fault = rule.fault(text);
      fault.ifPresent(f -> wrong(key, Values.quoted(text), f));
      return fault.isPresent() ? Optional.empty() : Optional.of(text);
    }
    wrong(key, Values.described(value), "a text in quotes");
    return Optional.empty();
  }

  OptionalDouble number(String key, Range range) {
    Object value = raw(key);
    if (value == null) {
      return OptionalDouble.empty();
    }
    if (!(value instanceof Number number)) {
      wrong(key, Values.described(value), "a number, " + range.words());
      return OptionalDouble.empty();
    }
    if (!range.holds(number.doubleValue())) {
      wrong(key, Values.shown(number.doubleValue()), range.words());
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(number.doubleValue());
  }

  double number(String key, Range range, double otherwise) {
    return number(key, range).orElse(otherwise);
  }

  /** A whole number. */
  int count(String key, Range range, int otherwise) {
    Object value = raw(key);
    if (value == null) {
      return otherwise;
    }
    if (!(value instanceof Long number)) {
      wrong(key, Values.described(value), "a whole number, " + range.words());
      return otherwise;
    }
    if (!range.holds(number)) {
      wrong(key, String.valueOf(number), range.words());
      return otherwise;
    }
    return Math.toIntExact(number);
  }

  /** One of a few words; a misspelt one is answered with the nearest. */
  <T> Optional<T> choice(String key, Map<String, T> words) {
    Object value = raw(key);
    if (value == null) {
      return Optional.empty();
    }
    if (value instanceof String text && words.containsKey(text)) {
      return Optional.of(words.get(text));
    }
    String expected = Words.oneOf(words.keySet());
    if (value instanceof String text) {
      wrong(key, Values.quoted(text), expected + Words.meant(NearestName.of(text, words.keySet())));
    } else {
      wrong(key, Values.described(value), expected);
    }
    return Optional.empty();
  }

  /** A table within this one; absent where it is missing or no table. */
  Section section(String key, String expected) {
    Object value = raw(key);
    if (value != null && !(value instanceof TomlTable)) {
      wrong(key, Values.described(value), expected);
    }
    return new Section(value instanceof TomlTable t ? t : null, path(key), notes);
  }

  /** The tables of a list of tables. */
  List<Section> sections(String key, String expected) {
    Object value = raw(key);
    List<Section> sections = new ArrayList<>();
    if (value instanceof TomlArray array && !array.isEmpty()) {
      for (int i = 0; i < array.size(); i++) {
        String at = path(key) + "[" + i + "]";
        if (array.get(i) instanceof TomlTable t) {
          sections.add(new Section(t, at, notes));
        } else {
          notes.error(
              at,
              "%s holds %s, expected %s"
                  .formatted(name(key), Values.described(array.get(i)), expected));
        }
      }
    } else if (value != null) {
      wrong(key, Values.described(value), expected);
    }
    return sections;
  }

  /** The texts of a list of texts; null where the key is absent or its value cannot be used. */
  @Nullable List<String> texts(String key, TextRule rule) {
    Object value = raw(key);
    if (value == null) {
      return null;
    }
    if (!(value instanceof TomlArray array) || array.isEmpty()) {
      wrong(key, Values.described(value), "a list of texts such as [\"1\", \"on\"]");
      return null;
    }
    List<String> texts = new ArrayList<>();
    for (int i = 0; i < array.size(); i++) {
      String at = path(key) + "[" + i + "]";
      Object entry = array.get(i);
      Optional<String> fault =
          entry instanceof String text ? rule.fault(text) : Optional.of("a text in quotes");
      if (fault.isPresent()) {
        String shown = entry instanceof String text ? Values.quoted(text) : Values.described(entry);
        notes.error(at, "%s holds %s, expected %s".formatted(name(key), shown, fault.get()));
        notes.unread(path(key));
      } else {
        texts.add((String) entry);
      }
    }
    return texts.size() == array.size() ? texts : null;
  }

  /** A value as it stands, for what is none of the above. */
  @Nullable Object raw(String key) {
    known.add(key);
    return table == null ? null : table.get(List.of(key));
  }

  void wrong(String key, String is, String expected) {
    notes.error(path(key), "%s is %s, expected %s".formatted(name(key), is, expected));
  }

  /** Reports unknown keys, each with the known one it is nearest to, then what is missing. */
  void close() {
    Set<String> meant = new LinkedHashSet<>();
    if (table != null) {
      for (String key : table.keySet()) {
        if (!known.contains(key)) {
          Optional<String> nearest = NearestName.of(key, known);
          nearest.ifPresent(meant::add);
          notes.error(
              path(key),
              "unknown key %s%s, expected %s"
                  .formatted(
                      Values.quoted(key),
                      path.isEmpty() ? "" : " in " + where(),
                      nearest.map(n -> Values.quoted(n)).orElse(Words.oneOf(known))));
        }
      }
    }
    meant.forEach(key -> notes.unread(path(key)));
    for (Missing m : missing) {
      if (!meant.contains(m.key())) {
        String in = path.isEmpty() ? "" : " in " + where();
        notes.error(
            path(m.key()), "%s is missing%s, expected %s".formatted(m.key(), in, m.expected()));
      }
    }
  }
}
