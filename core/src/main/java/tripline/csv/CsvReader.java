package tripline.csv;

import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Reads a recording that is pushed in as bytes, in pieces of any size.
 *
 * <p>The answer does not depend on how the file is cut into pieces. Give it {@link #accept} for
 * every piece and {@link #finish} at the end; the first fault is returned by the call that met it
 * and by every later one.
 */
public final class CsvReader {
  /** Longest row, without its line end: far beyond any logger's, bounds what is held. */
  public static final int MOST_ROW_BYTES = 65_536;

  private static final byte[] BYTE_ORDER_MARK = {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF};

  private final CsvLayout layout;
  private final CsvRequest request;
  private final CsvEvents events;
  private final Shortcut shortcut;
  private final Row row = new Row();
  private final Cells cells;
  private final RowEnds ends = new RowEnds();
  private final MetadataLines metadata = new MetadataLines(row);
  private @Nullable Body body;
  private byte[] carried = new byte[512];
  private int carriedLength;
  private boolean rowBegun;
  private int markBytes;
  private long line = 1;
  private boolean finished;
  private Optional<CsvFault> fault = Optional.empty();

  /** Whether plain rows may take the short way. */
  enum Shortcut {
    TAKEN,
    AVOIDED
  }

  /** What reads rows, once the header is known. */
  private record Body(CarefulRow careful, OrdinaryRows ordinary, Moments moments) {}

  /**
   * @param layout how the file is written
   * @param request what is wanted of it
   * @param events takes the header and hands out sinks
   * @throws IllegalArgumentException if a channel has the name of the time, position or mark column
   */
  public CsvReader(CsvLayout layout, CsvRequest request, CsvEvents events) {
    this(layout, request, events, Shortcut.TAKEN);
  }

  CsvReader(CsvLayout layout, CsvRequest request, CsvEvents events, Shortcut shortcut) {
    for (String name : new String[] {layout.time(), layout.position(), CsvLayout.MARK}) {
      if (request.channels().indexOf(name) >= 0) {
        throw new IllegalArgumentException(
            "contact channel '" + name + "' is the time, position or mark column");
      }
    }
    this.layout = layout;
    this.request = request;
    this.events = events;
    this.shortcut = shortcut;
    this.cells = new Cells((byte) layout.separator(), row);
  }

  /**
   * Takes the next piece of the file.
   *
   * @return the first fault of the file, if it was met in this piece or before
   * @throws IndexOutOfBoundsException if the piece does not lie in the array
   * @throws IllegalStateException after {@link #finish}
   */
  public Optional<CsvFault> accept(byte[] bytes, int offset, int length) {
    Objects.checkFromIndexSize(offset, length, bytes.length);
    if (finished) {
      throw new IllegalStateException("the recording is finished");
    }
    if (fault.isEmpty()) {
      try {
        take(bytes, offset, offset + length);
      } catch (Refused refused) {
        fault = Optional.of(refused.fault());
      }
    }
    return fault;
  }

  /**
   * The file is at its end.
   *
   * @return the first fault of the file, if there is one
   */
  public Optional<CsvFault> finish() {
    if (!finished && fault.isEmpty()) {
      try {
        end();
      } catch (Refused refused) {
        fault = Optional.of(refused.fault());
      }
    }
    finished = true;
    return fault;
  }

  /** What was met so far; whole only after {@link #finish}. */
  public CsvSummary summary() {
    return body == null ? new CsvSummary(0, 0, 0, 0) : body.moments().summary();
  }

  private void take(byte[] bytes, int from, int to) throws Refused {
    int p = from;
    if (markBytes < BYTE_ORDER_MARK.length) {
      p = afterByteOrderMark(bytes, from, to);
    }
    rows(bytes, p, to);
  }

  /** Passes a byte order mark, however it is cut; gives back what only began like one. */
  private int afterByteOrderMark(byte[] bytes, int from, int to) throws Refused {
    int p = from;
    while (p < to && markBytes < BYTE_ORDER_MARK.length && bytes[p] == BYTE_ORDER_MARK[markBytes]) {
      markBytes++;
      p++;
    }
    if (p < to && markBytes < BYTE_ORDER_MARK.length) {
      int begun = markBytes;
      markBytes = BYTE_ORDER_MARK.length;
      rows(BYTE_ORDER_MARK, 0, begun);
    }
    return p;
  }

  private void rows(byte[] bytes, int from, int to) throws Refused {
    int p = from;
    if (rowBegun) {
      p = restOfRow(bytes, p, to);
    }
    int plainLimit = body == null ? from : afterLastLineEnd(bytes, p, to);
    while (p < to) {
      if (body != null && p < plainLimit && shortcut == Shortcut.TAKEN) {
        OrdinaryRows ordinary = body.ordinary();
        p = ordinary.read(bytes, p, plainLimit, line);
        line = ordinary.line();
        if (p == to) {
          return;
        }
      }
      ends.begin();
      int end = ends.find(bytes, p, to);
      if (end == RowEnds.NONE) {
        rowBegun = true;
        carry(bytes, p, to);
        return;
      }
      boolean header = body == null;
      row(bytes, p, end, false);
      p = end + 1;
      if (header && body != null) {
        plainLimit = afterLastLineEnd(bytes, p, to);
      }
    }
  }

  /** Completes the row that began in a piece before; where it ends in this one. */
  private int restOfRow(byte[] bytes, int from, int to) throws Refused {
    int end = ends.find(bytes, from, to);
    if (end == RowEnds.NONE) {
      carry(bytes, from, to);
      return to;
    }
    if (end < from) {
      carriedLength--;
    } else {
      carry(bytes, from, end);
    }
    rowBegun = false;
    int length = carriedLength;
    carriedLength = 0;
    row(carried, 0, length, false);
    return end + 1;
  }

  private int afterLastLineEnd(byte[] bytes, int from, int to) {
    byte eol = ends.eol();
    int p = to;
    while (p > from && bytes[p - 1] != eol) {
      p--;
    }
    return p;
  }

  private void carry(byte[] bytes, int from, int to) throws Refused {
    int room = MOST_ROW_BYTES + 1 - carriedLength;
    int length = Math.min(to - from, room);
    if (carriedLength + length > carried.length) {
      int doubled = Math.max(2 * carried.length, carriedLength + length);
      carried = Arrays.copyOf(carried, Math.min(doubled, MOST_ROW_BYTES + 1));
    }
    System.arraycopy(bytes, from, carried, carriedLength, length);
    carriedLength += length;
    if (carriedLength > MOST_ROW_BYTES) {
      throw tooLong(carried, 0);
    }
  }

  private void row(byte[] bytes, int from, int to, boolean cutOff) throws Refused {
    if (to - from > MOST_ROW_BYTES) {
      throw tooLong(bytes, from);
    }
    boolean pair = to > from && bytes[to - 1] == '\r' && ends.eol() == '\n';
    row.set(bytes, from, pair ? to - 1 : to, line, ends.eol(), cutOff);
    if (!row.isEmpty()) {
      if (body != null) {
        body.careful().read();
      } else if (bytes[from] == '#') {
        metadata.read();
      } else {
        header();
      }
    }
    line += 1 + row.innerLines();
  }

  private void header() throws Refused {
    if (startsAsUtf16()) {
      throw row.refuse(row.from(), "the file is UTF-16", "expected UTF-8");
    }
    HeaderRow header = new HeaderRow(layout, request, row, cells);
    Columns columns = header.read();
    ends.headerSeen();
    Moments moments = new Moments(events, events.onHeader(header.header(metadata.metadata())));
    ContactWords words = new ContactWords(layout);
    StampClock clock = new StampClock();
    body =
        new Body(
            new CarefulRow(layout, columns, row, cells, words, clock, moments),
            new OrdinaryRows(layout, columns, ends.eol(), words, clock, moments),
            moments);
  }

  private boolean startsAsUtf16() {
    if (line != 1 || row.to() - row.from() < 2) {
      return false;
    }
    int a = row.bytes()[row.from()] & 0xFF;
    int b = row.bytes()[row.from() + 1] & 0xFF;
    return (a == 0xFF && b == 0xFE) || (a == 0xFE && b == 0xFF);
  }

  private Refused tooLong(byte[] bytes, int from) {
    int quotes = 0;
    for (int i = from; i < from + MOST_ROW_BYTES; i++) {
      quotes += bytes[i] == '"' ? 1 : 0;
    }
    row.set(bytes, from, from + MOST_ROW_BYTES, line, ends.eol(), false);
    return row.refuse(
        from,
        "row of more than " + MOST_ROW_BYTES + " bytes",
        quotes % 2 == 0
            ? "expected a line end by now"
            : "expected a line end by now, or the closing quotation mark of a cell");
  }

  private void end() throws Refused {
    if (markBytes > 0 && markBytes < BYTE_ORDER_MARK.length) {
      int begun = markBytes;
      markBytes = BYTE_ORDER_MARK.length;
      rows(BYTE_ORDER_MARK, 0, begun);
    }
    if (rowBegun) {
      rowBegun = false;
      row(carried, 0, carriedLength, true);
    }
    row.set(carried, 0, 0, line, ends.eol(), true);
    if (body == null) {
      throw row.refuse(
          0,
          line == 1 ? "the file is empty" : "the file ends before a header",
          "expected a row of column names");
    }
    if (body.moments().summary().rows() == 0) {
      throw row.refuse(0, "the file ends after its header", "expected rows");
    }
  }
}
