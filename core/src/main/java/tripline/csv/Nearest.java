package tripline.csv;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The name that a misspelt one most likely meant. */
final class Nearest {
  /** Names are compared up to this length: a header may hold anything. */
  private static final int MOST = 64;

  private Nearest() {}

  /** The nearest of the names, the first of equals; none where no name has a letter in place. */
  static Optional<String> to(String wanted, List<String> names) {
    String best = null;
    int bestDistance = Integer.MAX_VALUE;
    for (String name : names) {
      int d = distance(folded(wanted), folded(name));
      if (d < bestDistance && d < Math.max(folded(wanted).length(), folded(name).length())) {
        best = name;
        bestDistance = d;
      }
    }
    return Optional.ofNullable(best);
  }

  private static String folded(String name) {
    return name.substring(0, Math.min(MOST, name.length())).toLowerCase(Locale.ROOT);
  }

  /** Edit distance (Levenshtein 1966): insertions, deletions and replacements. */
  static int distance(String a, String b) {
    int[] above = new int[b.length() + 1];
    int[] row = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      above[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int replaced = above[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        row[j] = Math.min(replaced, 1 + Math.min(above[j], row[j - 1]));
      }
      int[] swap = above;
      above = row;
      row = swap;
    }
    return above[b.length()];
  }
}
