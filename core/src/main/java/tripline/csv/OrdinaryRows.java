package tripline.csv;

import java.util.Arrays;

/**
 * The hot path: rows whose cells are plain numbers, states and nothing else.
 *
 * <p>Long for one reason: a row is read in one method, its cursor and sums in local variables, with
 * no call per cell. It refuses nothing. At the first row that is not plain (quotation marks,
 * blanks, exponents, marks, a new minute of stamps, anything wrong) it stops, and {@link
 * CarefulRow} reads that one.
 *
 * <p>The columns are cut into steps: the time, the position, runs of neighbouring contacts, and
 * columns to pass over. A run whose bytes equal those of the row before is not read again: contacts
 * seldom change.
 */
final class OrdinaryRows {
  private static final int TIME = 0;
  private static final int STAMP = 1;
  private static final int POSITION = 2;
  private static final int CONTACTS = 3;
  private static final int PASS = 4;

  /** More digits than a {@code long} holds for certain. */
  private static final int MOST_DIGITS = 19;

  private static final long EXACT = 1L << 53;

  private final byte separator;
  private final byte decimalMark;
  private final byte eol;
  private final int decimalsToNs;
  private final ContactWords words;
  private final StampClock clock;
  private final Moments moments;

  /** Bytes that end a plain cell: separator, line ends, and those that no plain cell holds. */
  private final boolean[] ends = new boolean[256];

  private final int[] steps;

  /** First column of a run of contacts, and the column after its last. */
  private final int[] runFrom;

  private final int[] runTo;

  /** Bit of a contact column; 0 for a mark, which is plain only while empty. */
  private final long[] bits;

  /** The run as the row before had it: where, how long with what ends it, and what it said. */
  private final int[] lastAt;

  private final int[] lastLength;
  private final long[] lastKnown;
  private final long[] lastClosed;

  private long line;

  OrdinaryRows(
      CsvLayout layout,
      Columns columns,
      byte eol,
      ContactWords words,
      StampClock clock,
      Moments moments) {
    this.separator = (byte) layout.separator();
    this.decimalMark = (byte) layout.decimal();
    this.eol = eol;
    this.decimalsToNs = layout.timeUnit().decimalsToNs();
    this.words = words;
    this.clock = clock;
    this.moments = moments;
    Arrays.fill(ends, 0, ' ', true);
    ends[separator] = true;
    ends['"'] = true;
    int count = columns.count();
    int[] kinds = new int[count];
    runFrom = new int[count];
    runTo = new int[count];
    bits = new long[count];
    int n = 0;
    for (int c = 0; c < count; c++) {
      switch (columns.kind(c)) {
        case Columns.TIME -> kinds[n++] = layout.timeUnit() == CsvTimeUnit.ISO ? STAMP : TIME;
        case Columns.POSITION -> kinds[n++] = POSITION;
        case Columns.CONTACT, Columns.MARK -> {
          bits[c] = columns.kind(c) == Columns.MARK ? 0 : 1L << columns.channel(c);
          if (n > 0 && kinds[n - 1] == CONTACTS) {
            runTo[n - 1] = c + 1;
          } else {
            kinds[n] = CONTACTS;
            runFrom[n] = c;
            runTo[n++] = c + 1;
          }
        }
        default -> kinds[n++] = PASS;
      }
    }
    steps = Arrays.copyOf(kinds, n);
    lastAt = new int[n];
    lastLength = new int[n];
    lastKnown = new long[n];
    lastClosed = new long[n];
  }

  /**
   * Reads rows as long as they are plain.
   *
   * @param from begin of a row
   * @param limit after the last line end of the piece: no plain row goes beyond
   * @param firstLine line of the first row
   * @return begin of the first row that was not read; {@link #line()} gives its line
   * @throws Refused if time has stepped back too often
   */
  int read(final byte[] bytes, final int from, final int limit, final long firstLine)
      throws Refused {
    Arrays.fill(lastLength, 0);
    line = firstLine;
    int start = from;
    while (start < limit) {
      int next = row(bytes, start, limit);
      if (next < 0) {
        return start;
      }
      start = next;
      line++;
    }
    return start;
  }

  /** Line of the row at which {@link #read} has stopped. */
  long line() {
    return line;
  }

  /** Reads one row and hands it on; where the next begins, or -1 if it is not plain. */
  private int row(final byte[] bytes, final int start, final int limit) throws Refused {
    final byte separator = this.separator;
    final int last = steps.length - 1;
    int p = start;
    long ns = 0;
    double reading = Double.NaN;
    long known = 0;
    long closed = 0;
    for (int s = 0; s <= last; s++) {
      int step = steps[s];
      switch (step) {
        case TIME, POSITION -> {
          final int cell = p;
          final boolean negative = bytes[p] == '-';
          if (negative) {
            p++;
          }
          final int first = p;
          long n = 0;
          int digit;
          while ((digit = bytes[p] - '0') >= 0 && digit <= 9) {
            n = n * 10 + digit;
            p++;
          }
          int digits = p - first;
          int decimals = 0;
          if (bytes[p] == decimalMark && decimalMark != separator) {
            final int point = ++p;
            while ((digit = bytes[p] - '0') >= 0 && digit <= 9) {
              n = n * 10 + digit;
              p++;
            }
            decimals = p - point;
            digits += decimals;
          }
          if (digits > MOST_DIGITS || n < 0) {
            return -1;
          }
          if (step == TIME) {
            int places = decimalsToNs - decimals;
            if (digits == 0 || places < 0) {
              return -1;
            }
            if (n > Decimal.most(places)) {
              return -1;
            }
            n *= Decimal.ten(places);
            ns = negative ? -n : n;
          } else if (digits != 0) {
            double v =
                n <= EXACT ? n / NearestDouble.ten(decimals) : NearestDouble.of(n, -decimals);
            reading = negative ? -v : v;
          } else if (p != cell) {
            return -1;
          }
        }
        case STAMP -> {
          p = clock.quick(bytes, p, limit);
          if (p < 0) {
            return -1;
          }
          ns = clock.quickNs();
        }
        case CONTACTS -> {
          int length = lastLength[s];
          int at = lastAt[s];
          if (length > 0
              && length <= limit - p
              && Arrays.equals(bytes, p, p + length, bytes, at, at + length)) {
            lastAt[s] = p;
            p += length;
            known |= lastKnown[s];
            closed |= lastClosed[s];
            continue;
          }
          final int begin = p;
          p = contacts(bytes, p, s);
          if (p < 0) {
            return -1;
          }
          lastAt[s] = begin;
          lastLength[s] = p - begin;
          known |= lastKnown[s];
          closed |= lastClosed[s];
          continue;
        }
        default -> {
          while (!ends[bytes[p] & 0xFF]) {
            p++;
          }
        }
      }
      p = afterCell(bytes, p, s == last);
      if (p < 0) {
        return -1;
      }
    }
    if (p - start > CsvReader.MOST_ROW_BYTES) {
      return -1;
    }
    moments.row(line, ns, reading, known, closed);
    return p;
  }

  /** Passes what must stand after a cell, or -1. */
  private int afterCell(byte[] bytes, int p, boolean lastCell) {
    byte b = bytes[p];
    if (!lastCell) {
      return b == separator ? p + 1 : -1;
    }
    if (b == eol) {
      return p + 1;
    }
    return b == '\r' && bytes[p + 1] == eol ? p + 2 : -1;
  }

  /** Reads a run of contacts; where it ends, or -1. */
  private int contacts(byte[] bytes, int from, int step) {
    long known = 0;
    long closed = 0;
    int p = from;
    int last = bits.length - 1;
    lastLength[step] = 0;
    for (int c = runFrom[step]; c < runTo[step]; c++) {
      int begin = p;
      while (!ends[bytes[p] & 0xFF]) {
        p++;
      }
      if (p > begin) {
        int state = bits[c] == 0 ? ContactWords.NEITHER : words.state(bytes, begin, p);
        if (state < 0) {
          return -1;
        }
        known |= bits[c];
        closed |= state == ContactWords.CLOSED ? bits[c] : 0;
      }
      p = afterCell(bytes, p, c == last);
      if (p < 0) {
        return -1;
      }
    }
    lastKnown[step] = known;
    lastClosed[step] = closed;
    return p;
  }
}
