package tripline.csv;

import org.jspecify.annotations.Nullable;

/** Reads any row, cell by cell, and locates what is wrong in it. */
final class CarefulRow {
  private final CsvLayout layout;
  private final byte decimalMark;
  private final Columns columns;
  private final Row row;
  private final Cells cells;
  private final ContactWords words;
  private final StampClock clock;
  private final Moments moments;
  private final Decimal decimal = new Decimal();
  private long ns;
  private double reading;
  private long known;
  private long closed;
  private @Nullable String mark;

  CarefulRow(
      CsvLayout layout,
      Columns columns,
      Row row,
      Cells cells,
      ContactWords words,
      StampClock clock,
      Moments moments) {
    this.layout = layout;
    this.decimalMark = (byte) layout.decimal();
    this.columns = columns;
    this.row = row;
    this.cells = cells;
    this.words = words;
    this.clock = clock;
    this.moments = moments;
  }

  /**
   * Reads the row and hands it on.
   *
   * @throws Refused if it has too few or too many cells, or one is not what its column holds
   */
  void read() throws Refused {
    reading = Double.NaN;
    known = 0;
    closed = 0;
    mark = null;
    Refused first = null;
    int surplusAt = row.to();
    cells.begin();
    while (cells.next()) {
      int column = cells.count() - 1;
      if (column == columns.count()) {
        surplusAt = cells.start();
      } else if (column < columns.count() && first == null) {
        first = cell(column);
      }
    }
    if (cells.count() != columns.count()) {
      throw unequal(surplusAt);
    }
    if (first != null) {
      throw first;
    }
    moments.row(row.line(), ns, reading, known, closed);
    if (mark != null) {
      moments.mark(mark);
    }
  }

  /** Reads a cell; what is wrong with it is only said once the row is known to be whole. */
  private @Nullable Refused cell(int column) {
    try {
      switch (columns.kind(column)) {
        case Columns.TIME -> time();
        case Columns.POSITION -> position();
        case Columns.CONTACT -> contact(column);
        case Columns.MARK -> mark();
        default -> {
          // nobody asked for this column
        }
      }
      return null;
    } catch (Refused wrong) {
      return wrong;
    }
  }

  private void time() throws Refused {
    cells.trim();
    if (cells.from() == cells.to()) {
      throw cells.refuse("empty time cell", "expected a time in every row");
    }
    ns = layout.timeUnit() == CsvTimeUnit.ISO ? stamp() : number();
  }

  private long stamp() throws Refused {
    long stamp = clock.nanos(cells.text(), cells.from(), cells.to());
    if (stamp == StampClock.NO_STAMP) {
      throw cells.refuse(
          shown() + " is no stamp",
          "expected RFC 3339 with time offset, such as 2026-03-02T08:14:05.123Z");
    }
    if (stamp == StampClock.OUT_OF_RANGE) {
      throw cells.refuse("stamp " + shown() + " is out of range", "expected 1678 to 2261");
    }
    return stamp;
  }

  private long number() throws Refused {
    if (!decimal.parse(cells.text(), cells.from(), cells.to(), decimalMark)) {
      throw cells.refuse(
          shown() + " is no time", "expected a number of " + layout.timeUnit().plural() + hint());
    }
    long number = decimal.toNanos(layout.timeUnit().decimalsToNs());
    if (number == Decimal.OUT_OF_RANGE) {
      throw cells.refuse(
          "time " + shown() + " is out of range", "expected less than 292 years, as nanoseconds");
    }
    return number;
  }

  private void position() throws Refused {
    cells.trim();
    if (cells.from() == cells.to()) {
      return;
    }
    if (!decimal.parse(cells.text(), cells.from(), cells.to(), decimalMark)) {
      throw cells.refuse(shown() + " is no position", "expected a number or nothing" + hint());
    }
    reading = decimal.toDouble(cells.text(), cells.from(), cells.to(), decimalMark);
    if (Double.isInfinite(reading)) {
      throw cells.refuse(
          "position " + shown() + " is out of range", "expected a number below 1e308");
    }
  }

  private void contact(int column) throws Refused {
    cells.trim();
    if (cells.from() == cells.to()) {
      return;
    }
    int state = words.state(cells.text(), cells.from(), cells.to());
    if (state == ContactWords.NEITHER) {
      throw cells.refuse(
          shown() + " is no state of contact " + Utf8.shown(columns.name(column)),
          words.expected());
    }
    long bit = 1L << columns.channel(column);
    known |= bit;
    closed |= state == ContactWords.CLOSED ? bit : 0;
  }

  private void mark() throws Refused {
    if (cells.from() == cells.to()) {
      return;
    }
    String text = Utf8.strict(cells.text(), cells.from(), cells.to());
    if (text == null) {
      throw cells.refuse("mark is not UTF-8", "expected text in UTF-8");
    }
    String plain = Utf8.plain(text);
    mark = plain.isEmpty() ? null : plain;
  }

  private Refused unequal(int at) {
    if (row.bytes()[row.from()] == '#') {
      return row.refuse(
          row.from(), "metadata line among the rows", "expected it before the header");
    }
    int count = cells.count();
    String cellCount = count == 1 ? "1 cell" : count + " cells";
    String what =
        row.cutOff() && count < columns.count()
            ? "the file breaks off in this row, after " + cellCount
            : "row of " + cellCount;
    return row.refuse(at, what, "expected " + columns.count() + " as in the header");
  }

  private String shown() {
    return Utf8.shown(cells.text(), cells.from(), cells.to());
  }

  /** What may be wrong with the layout, where the cell would be sound in another. */
  private String hint() {
    byte other = (byte) (layout.decimal() == '.' ? ',' : '.');
    if (decimal.parse(cells.text(), cells.from(), cells.to(), other)) {
      return " with '" + layout.decimal() + "' as decimal mark";
    }
    boolean isStamp =
        new StampClock().nanos(cells.text(), cells.from(), cells.to()) != StampClock.NO_STAMP;
    return isStamp ? " (this is a stamp: time_unit \"iso\")" : "";
  }
}
