package tripline.harness.jobfile;

import org.jspecify.annotations.Nullable;
import org.tomlj.TomlPosition;

/**
 * Where something stands in a file.
 *
 * @param line counted from 1
 * @param column in characters, counted from 1
 */
record Place(long line, long column) implements Comparable<Place> {
  static final Place TOP = new Place(1, 1);

  static Place of(@Nullable TomlPosition position) {
    return position == null ? TOP : new Place(position.line(), position.column());
  }

  @Override
  public int compareTo(Place other) {
    int lines = Long.compare(line, other.line);
    return lines != 0 ? lines : Long.compare(column, other.column);
  }
}
