package tripline.harness.jobfile;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Turns of phrase that several messages share. */
final class Words {
  private Words() {}

  /** {@code "a", "b" or "c"}. */
  static String oneOf(Collection<String> words) {
    List<String> quoted = words.stream().map(Values::quoted).toList();
    if (quoted.size() < 2) {
      return String.join("", quoted);
    }
    return quoted.stream().limit(quoted.size() - 1L).collect(Collectors.joining(", "))
        + " or "
        + quoted.get(quoted.size() - 1);
  }

  /** Two words and what they stand for, in the order messages name them. */
  static <T> Map<String, T> inOrder(String first, T one, String second, T other) {
    Map<String, T> words = new LinkedHashMap<>();
    words.put(first, one);
    words.put(second, other);
    return words;
  }

  /** {@code ; meant: "a"?}, or nothing. */
  static String meant(Optional<String> nearest) {
    return nearest.map(n -> "; meant: " + Values.quoted(n) + "?").orElse("");
  }
}
