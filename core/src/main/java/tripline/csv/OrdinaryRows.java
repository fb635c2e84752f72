package tripline.csv;

import org.jspecify.annotations.Nullable;

/**
 * The hot path: rows whose cells are plain numbers, states and nothing else.
 *
 * <p>Its one method is long because a row is read with its cursor and sums in local variables and
 * without a call per number: measured, that is a fifth of the whole time. Rows of the same contacts
 * are handed on a block at a time, for the same reason. It refuses nothing. At the first row that
 * is not plain (quotation marks, blanks, exponents, marks, a new minute of stamps, anything wrong)
 * it stops, and {@link CarefulRow} reads that one.
 */
final class OrdinaryRows {
  /** More digits than a {@code long} holds for certain. */
  private static final int MOST_DIGITS = 19;

  /** Whole numbers up to here are doubles. */
  private static final long EXACT = 1L << 53;

  /** Rows handed on at a time at most. */
  private static final int BLOCK = 256;

  private final byte separator;
  private final byte decimalMark;
  private final int decimalsToNs;
  private final PlainCells cells;
  private final byte[] steps;
  private final @Nullable ContactRun[] runs;
  private final StampClock clock;
  private final Moments moments;
  private final long[] times = new long[BLOCK];
  private final double[] readings = new double[BLOCK];
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
    this.decimalsToNs = layout.timeUnit().decimalsToNs();
    this.cells = new PlainCells(separator, eol);
    RowPlan plan = new RowPlan(layout, columns, cells, words);
    this.steps = plan.steps();
    this.runs = plan.runs();
    this.clock = clock;
    this.moments = moments;
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
    forgetRuns();
    final byte separator = this.separator;
    final byte decimalMark = this.decimalMark;
    final byte[] steps = this.steps;
    final @Nullable ContactRun[] runs = this.runs;
    final long[] times = this.times;
    final double[] readings = this.readings;
    final int last = steps.length - 1;
    long lastNs = moments.lastNs();
    long blockKnown = 0;
    long blockClosed = 0;
    int block = 0;
    long row = firstLine;
    int start = from;
    rows:
    while (start < limit) {
      int p = start;
      long ns = 0;
      double reading = Double.NaN;
      long known = 0;
      long closed = 0;
      for (int s = 0; s <= last; s++) {
        final @Nullable ContactRun run = runs[s];
        if (run != null) {
          p = run.read(bytes, p, limit);
          if (p < 0) {
            break rows;
          }
          known |= run.known();
          closed |= run.closed();
          continue;
        }
        final int step = steps[s];
        if (step <= RowPlan.POSITION) {
          final int begin = p;
          final boolean negative = bytes[p] == '-';
          if (negative) {
            p++;
          }
          final int first = p;
          long n = 0;
          int digit;
          // As a char a byte below the digits is one above them.
          while ((digit = (char) (bytes[p] - '0')) <= 9) {
            n = n * 10 + digit;
            p++;
          }
          int digits = p - first;
          int decimals = 0;
          if (bytes[p] == decimalMark && decimalMark != separator) {
            final int point = ++p;
            while ((digit = (char) (bytes[p] - '0')) <= 9) {
              n = n * 10 + digit;
              p++;
            }
            decimals = p - point;
            digits += decimals;
          }
          if (digits > MOST_DIGITS || n < 0) {
            break rows;
          }
          if (step == RowPlan.TIME) {
            final int places = decimalsToNs - decimals;
            if (digits == 0 || places < 0 || n > Decimal.most(places)) {
              break rows;
            }
            n *= Decimal.ten(places);
            ns = negative ? -n : n;
          } else if (digits > 0) {
            double v =
                n <= EXACT ? n / NearestDouble.ten(decimals) : NearestDouble.of(n, -decimals);
            reading = negative ? -v : v;
          } else if (p > begin) {
            break rows;
          }
        } else if (step == RowPlan.STAMP) {
          p = clock.quick(bytes, p, limit);
          if (p < 0) {
            break rows;
          }
          ns = clock.quickNs();
        } else {
          p = cells.end(bytes, p);
        }
        if (s < last && bytes[p] == separator) {
          p++;
        } else {
          p = cells.after(bytes, p, s == last);
          if (p < 0) {
            break rows;
          }
        }
      }
      if (p - start > CsvReader.MOST_ROW_BYTES) {
        break;
      }
      if (known != blockKnown || closed != blockClosed || ns <= lastNs || block == BLOCK) {
        if (block > 0) {
          moments.rows(times, readings, block, blockKnown, blockClosed);
          block = 0;
        }
        blockKnown = known;
        blockClosed = closed;
      }
      if (ns <= lastNs) {
        moments.row(row, ns, reading, known, closed);
      } else {
        times[block] = ns;
        readings[block] = reading;
        block++;
      }
      lastNs = ns;
      row++;
      start = p;
    }
    if (block > 0) {
      moments.rows(times, readings, block, blockKnown, blockClosed);
    }
    line = row;
    return start;
  }

  /** Line of the row at which {@link #read} has stopped. */
  long line() {
    return line;
  }

  private void forgetRuns() {
    for (ContactRun run : runs) {
      if (run != null) {
        run.forget();
      }
    }
  }
}
