package tripline.csv;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import tripline.sample.Drive;

/**
 * How a recording is written.
 *
 * @param separator between cells: an ASCII character that is no letter, digit, quotation mark,
 *     sign, {@code #} or line end; a separator equal to the decimal mark works where numbers are
 *     quoted
 * @param decimal decimal mark, point or comma
 * @param time name of the time column
 * @param timeUnit what the time column holds
 * @param position name of the position column
 * @param closed cell texts that mean a closed contact, in any case, blanks around them ignored
 * @param open cell texts that mean an open contact
 * @param drive what moved the valve, where the recording itself does not say
 */
public record CsvLayout(
    char separator,
    char decimal,
    String time,
    CsvTimeUnit timeUnit,
    String position,
    List<String> closed,
    List<String> open,
    Optional<Drive> drive) {

  /** Name of the column that holds what the operator pressed. */
  public static final String MARK = "mark";

  /** The layout of a recording that no job sheet describes. */
  public static final CsvLayout DEFAULT =
      new CsvLayout(
          ',',
          '.',
          "time",
          CsvTimeUnit.S,
          "position",
          List.of("1", "closed", "true", "on"),
          List.of("0", "open", "false", "off"),
          Optional.empty());

  /**
   * @throws IllegalArgumentException if a separator or decimal mark is none, a column name is empty
   *     or stands for two columns, a word is empty, a list of words is, or a word means both
   *     states; the message says which, in words for the writer of a job sheet
   */
  public CsvLayout {
    closed = List.copyOf(closed);
    open = List.copyOf(open);
    if (!separates(separator)) {
      throw new IllegalArgumentException(
          "separator '" + separator + "' cannot be told from the cells, expected , ; | or a tab");
    }
    if (decimal != '.' && decimal != ',') {
      throw new IllegalArgumentException("decimal mark '" + decimal + "', expected . or ,");
    }
    if (time.isBlank() || position.isBlank()) {
      throw new IllegalArgumentException("a column name is empty");
    }
    if (time.equals(position) || time.equals(MARK) || position.equals(MARK)) {
      throw new IllegalArgumentException(
          "time, position and "
              + MARK
              + " must be three columns, got '"
              + time
              + "', '"
              + position
              + "'");
    }
    Set<String> words = folded(closed);
    words.retainAll(folded(open));
    if (!words.isEmpty()) {
      throw new IllegalArgumentException(
          "'" + words.iterator().next() + "' means both closed and open");
    }
  }

  private static boolean separates(char c) {
    return c == '\t'
        || (c >= ' ' && c <= '~' && !Character.isLetterOrDigit(c) && "\"#+-".indexOf(c) < 0);
  }

  private static Set<String> folded(List<String> words) {
    if (words.isEmpty()) {
      throw new IllegalArgumentException("no word for one of the contact states");
    }
    Set<String> folded = new HashSet<>();
    for (String word : words) {
      if (word.isBlank()) {
        throw new IllegalArgumentException(
            "an empty word for a contact state, expected some text: an empty cell is no reading");
      }
      folded.add(word.strip().toLowerCase(Locale.ROOT));
    }
    return folded;
  }
}
