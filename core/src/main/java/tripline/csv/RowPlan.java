package tripline.csv;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A plain row as a list of steps: a number, a stamp, a run of contacts, a column to pass over. */
final class RowPlan {
  static final byte TIME = 0;
  static final byte POSITION = 1;
  static final byte STAMP = 2;
  static final byte PASS = 3;
  static final byte CONTACTS = 4;

  private final byte[] steps;
  private final @Nullable ContactRun[] runs;

  RowPlan(CsvLayout layout, Columns columns, PlainCells cells, ContactWords words) {
    int count = columns.count();
    byte[] kinds = new byte[count];
    List<@Nullable ContactRun> found = new ArrayList<>();
    int column = 0;
    while (column < count) {
      int end = endOfRun(columns, column);
      if (end > column) {
        long[] bits = bits(columns, column, end);
        kinds[found.size()] = CONTACTS;
        found.add(new ContactRun(cells, words, bits, end == count));
        column = end;
      } else {
        kinds[found.size()] = step(layout, columns.kind(column));
        found.add(null);
        column++;
      }
    }
    steps = Arrays.copyOf(kinds, found.size());
    runs = found.toArray(new ContactRun[0]);
  }

  /** The steps, from the first column to the last. */
  byte[] steps() {
    return steps;
  }

  /** The run of each step, null where it is something else. */
  @Nullable ContactRun[] runs() {
    return runs;
  }

  private static byte step(CsvLayout layout, byte kind) {
    return switch (kind) {
      case Columns.TIME -> layout.timeUnit() == CsvTimeUnit.ISO ? STAMP : TIME;
      case Columns.POSITION -> POSITION;
      default -> PASS;
    };
  }

  /** A mark belongs to a run: it is nearly always empty. */
  private static int endOfRun(Columns columns, int from) {
    int c = from;
    while (c < columns.count()
        && (columns.kind(c) == Columns.CONTACT || columns.kind(c) == Columns.MARK)) {
      c++;
    }
    return c;
  }

  private static long[] bits(Columns columns, int from, int to) {
    long[] bits = new long[to - from];
    for (int c = from; c < to; c++) {
      bits[c - from] = columns.kind(c) == Columns.MARK ? 0 : 1L << columns.channel(c);
    }
    return bits;
  }
}
