package tripline.csv;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tripline.sample.Channels;

/** Reads the row of column names and holds it against what is wanted. */
final class HeaderRow {
  /** How many column names a message repeats. */
  private static final int MOST_SHOWN = 6;

  private final CsvLayout layout;
  private final CsvRequest request;
  private final Row row;
  private final Cells cells;
  private final List<String> names = new ArrayList<>();
  private final List<Integer> starts = new ArrayList<>();
  private final List<String> ignored = new ArrayList<>();
  private final List<String> absent = new ArrayList<>();

  HeaderRow(CsvLayout layout, CsvRequest request, Row row, Cells cells) {
    this.layout = layout;
    this.request = request;
    this.row = row;
    this.cells = cells;
  }

  /**
   * @throws Refused if a name is not UTF-8, a wanted column is missing or stands twice
   */
  Columns read() throws Refused {
    readNames();
    int count = names.size();
    byte[] kinds = new byte[count];
    byte[] channels = new byte[count];
    assign(layout.time(), Columns.TIME, 0, kinds, channels);
    assign(layout.position(), Columns.POSITION, 0, kinds, channels);
    Channels wanted = request.channels();
    for (int i = 0; i < wanted.size(); i++) {
      assign(wanted.contacts().get(i), Columns.CONTACT, i, kinds, channels);
    }
    assign(CsvLayout.MARK, Columns.MARK, 0, kinds, channels);
    for (int c = 0; c < count; c++) {
      if (kinds[c] == Columns.IGNORED) {
        ignored.add(names.get(c).isEmpty() ? "number " + (c + 1) : names.get(c));
      }
    }
    return new Columns(names.toArray(String[]::new), kinds, channels);
  }

  CsvHeader header(CsvMetadata metadata) {
    return new CsvHeader(metadata, names, ignored, absent);
  }

  private void readNames() throws Refused {
    cells.begin();
    while (cells.next()) {
      @Nullable String name = Utf8.strict(cells.text(), cells.from(), cells.to());
      if (name == null) {
        throw cells.refuse("column name is not UTF-8", "expected text in UTF-8");
      }
      names.add(name.strip());
      starts.add(cells.start());
    }
  }

  private void assign(String name, byte kind, int channel, byte[] kinds, byte[] channels)
      throws Refused {
    int column = names.indexOf(name);
    if (column < 0) {
      missing(name, kind);
      return;
    }
    int last = names.lastIndexOf(name);
    if (last != column) {
      throw row.refuse(
          starts.get(last),
          "column " + Utf8.shown(name) + " stands twice",
          "expected each column once");
    }
    kinds[column] = kind;
    channels[column] = (byte) channel;
  }

  private void missing(String name, byte kind) throws Refused {
    if (kind == Columns.MARK) {
      return;
    }
    if (request.optional().contains(name) && kind == Columns.CONTACT) {
      absent.add(name);
      return;
    }
    Optional<Character> other = otherSeparator();
    if (other.isPresent()) {
      throw row.refuse(
          row.from(),
          "the header is one cell, " + Utf8.shown(names.get(0)),
          "expected names with "
              + named(layout.separator())
              + " between them, the file seems to use "
              + named(other.get()));
    }
    String role =
        switch (kind) {
          case Columns.TIME -> "time column ";
          case Columns.POSITION -> "position column ";
          default -> "contact column ";
        };
    List<String> unused = names.stream().filter(n -> !n.isEmpty() && !wanted(n)).toList();
    Optional<String> nearest = Nearest.to(name, unused);
    int at = nearest.map(n -> starts.get(names.indexOf(n))).orElse(row.from());
    throw row.refuse(
        at,
        "no " + role + Utf8.shown(name),
        nearest
            .map(n -> "expected it in the header, the nearest name there is " + Utf8.shown(n))
            .orElseGet(() -> "expected it in the header, which has " + columns()));
  }

  private String columns() {
    String columns =
        names.stream().limit(MOST_SHOWN).map(Utf8::shown).collect(Collectors.joining(", "));
    return names.size() > MOST_SHOWN ? columns + " and more" : columns;
  }

  private boolean wanted(String name) {
    return name.equals(layout.time())
        || name.equals(layout.position())
        || name.equals(CsvLayout.MARK)
        || request.channels().indexOf(name) >= 0;
  }

  private Optional<Character> otherSeparator() {
    if (names.size() == 1) {
      for (char c : new char[] {';', ',', '\t', '|'}) {
        if (names.get(0).indexOf(c) >= 0) {
          return Optional.of(c);
        }
      }
    }
    return Optional.empty();
  }

  private static String named(char separator) {
    return separator == '\t' ? "a tab" : "'" + separator + "'";
  }
}
