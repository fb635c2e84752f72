package tripline.job;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** The known name a misspelt one was probably meant to be. */
public final class NearestName {
  private NearestName() {}

  /**
   * The known name fewest slips away from the one written, if that is few enough to be a slip: at
   * most a third of its letters, at least two. Of several the first in order.
   *
   * @param written what was written
   * @param known what could have been written
   */
  public static Optional<String> of(String written, Collection<String> known) {
    String best = null;
    int least = Integer.MAX_VALUE;
    for (String name : known) {
      int slips = slips(written.toLowerCase(Locale.ROOT), name.toLowerCase(Locale.ROOT));
      if (slips < least && slips <= Math.max(2, name.length() / 3) && slips < name.length()) {
        least = slips;
        best = name;
      }
    }
    return Optional.ofNullable(best);
  }

  /**
   * Edit distance with swapped neighbours counted as one slip: optimal string alignment, the
   * restricted form of Damerau's distance (Commun. ACM 7 (1964) 171).
   */
  static int slips(String a, String b) {
    int[][] d = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        if (i == 0 || j == 0) {
          d[i][j] = i + j;
          continue;
        }
        int differs = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        d[i][j] = Math.min(d[i - 1][j - 1] + differs, 1 + Math.min(d[i - 1][j], d[i][j - 1]));
        boolean swapped =
            i > 1
                && j > 1
                && a.charAt(i - 1) == b.charAt(j - 2)
                && a.charAt(i - 2) == b.charAt(j - 1);
        if (swapped) {
          d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
        }
      }
    }
    return d[a.length()][b.length()];
  }
}
