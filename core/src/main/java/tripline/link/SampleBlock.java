package tripline.link;

/**
 * A block of samples (SPEC §5, 04): filled row by row and sent, or read from a body. Reusable, so
 * that neither direction need allocate.
 */
public final class SampleBlock implements LinkMessage {
  private long number;
  private long stampMicros;
  private long periodNs;
  private long known;
  private int rows;
  private final int[] counts = new int[SamplesLayout.MOST_ROWS];
  private final boolean[] readings = new boolean[SamplesLayout.MOST_ROWS];
  private final long[] levels = new long[SamplesLayout.MOST_ROWS];
  private final long[] gapMicros = new long[SamplesLayout.MOST_ROWS];
  private boolean anyReading;
  private int firstCount;
  private int lastCount;
  private int stepWidth;
  private long levelsDiffer;
  private int gapWidth;

  /** An empty block; {@link #begin} it before use. */
  public SampleBlock() {}

  /**
   * Empties the block.
   *
   * @param number sampling instants since start before the first row, modulo 2^32
   * @param stampMicros time of the first row, 0 to 2^53 - 1
   * @param periodNs from row to row, 32 bits; 0: each row tells its own gap
   * @param known contacts sampled
   * @throws IllegalArgumentException if the period is outside its range
   */
  public SampleBlock begin(long number, long stampMicros, long periodNs, long known) {
    this.number = number & 0xffff_ffffL;
    this.stampMicros = stampMicros;
    if (periodNs < 0 || periodNs > 0xffff_ffffL) {
      throw new IllegalArgumentException("samples: a period of " + periodNs + " ns");
    }
    this.periodNs = periodNs;
    this.known = known;
    rows = 0;
    anyReading = false;
    firstCount = 0;
    lastCount = 0;
    stepWidth = 0;
    levelsDiffer = 0;
    gapWidth = periodNs == 0 ? 2 : 0;
    return this;
  }

  /**
   * Adds a row with a reading.
   *
   * @param gap microseconds since the row before, 32 bits; only looked at if the period is 0 and
   *     this is not the first row
   * @return false if the row does not fit any more: nothing was added, a new block is to begin
   */
  public boolean add(int count, long rowLevels, long gap) {
    int step = anyReading ? count - lastCount : 0;
    if (step == SamplesLayout.NO_STEP_32
        || !fits(Math.max(stepWidth, width(step)), rowLevels, gap)) {
      return false;
    }
    stepWidth = Math.max(stepWidth, width(step));
    firstCount = anyReading ? firstCount : count;
    lastCount = count;
    anyReading = true;
    counts[rows] = count;
    append(true, rowLevels, gap);
    return true;
  }

  /** Adds a row without a reading; otherwise as {@link #add}. */
  public boolean addWithoutReading(long rowLevels, long gap) {
    if (!fits(stepWidth, rowLevels, gap)) {
      return false;
    }
    counts[rows] = 0;
    append(false, rowLevels, gap);
    return true;
  }

  private void append(boolean reading, long rowLevels, long gap) {
    readings[rows] = reading;
    levels[rows] = rowLevels & known;
    gapMicros[rows] = rows == 0 || periodNs != 0 ? 0 : gap;
    levelsDiffer |= levels[rows] ^ levels[0];
    gapWidth = widerGap(gapMicros[rows]);
    rows++;
  }

  private boolean fits(int step, long rowLevels, long gap) {
    long differ = rows == 0 ? 0 : levelsDiffer | ((rowLevels & known) ^ levels[0]);
    int size = step + levelsWidth(differ) + widerGap(rows == 0 ? 0 : gap);
    return rows < SamplesLayout.MOST_ROWS
        && SamplesLayout.ROWS + (rows + 1) * size <= Layout.MOST_BODY;
  }

  private int widerGap(long gap) {
    return periodNs == 0 && gap > 0xffff ? 4 : gapWidth;
  }

  private static int width(int step) {
    return step == (byte) step && step != SamplesLayout.NO_STEP_8
        ? 1
        : step == (short) step && step != SamplesLayout.NO_STEP_16 ? 2 : 4;
  }

  private static int levelsWidth(long differ) {
    int bits = Long.SIZE - Long.numberOfLeadingZeros(differ);
    return bits == 0 ? 0 : bits <= 8 ? 1 : bits <= 16 ? 2 : bits <= 32 ? 4 : 8;
  }

  @Override
  public MessageType type() {
    return MessageType.SAMPLES;
  }

  @Override
  public int writeBody(byte[] body) {
    BodyWriter.clear(body, type());
    int levelsWidth = levelsWidth(levelsDiffer);
    body[Layout.FORM] = (byte) SamplesLayout.form(stepWidth, levelsWidth, gapWidth);
    Le.put32(body, SamplesLayout.NUMBER, number);
    Le.put64(body, SamplesLayout.STAMP, stampMicros);
    Le.put32(body, SamplesLayout.PERIOD, periodNs);
    Le.put32(body, SamplesLayout.POSITION, firstCount);
    Le.put64(body, SamplesLayout.KNOWN, known);
    Le.put64(body, SamplesLayout.LEVELS, levels[0]);
    Le.put16(body, SamplesLayout.COUNT, rows);
    int at = SamplesLayout.ROWS;
    int before = firstCount;
    for (int i = 0; i < rows; i++) {
      if (stepWidth > 0) {
        putLow(body, at, readings[i] ? counts[i] - before : -1L << (8 * stepWidth - 1), stepWidth);
        before = readings[i] ? counts[i] : before;
      }
      putLow(body, at + stepWidth, levels[i], levelsWidth);
      putLow(body, at + stepWidth + levelsWidth, gapMicros[i], gapWidth);
      at += stepWidth + levelsWidth + gapWidth;
    }
    return BodyWriter.checked(type(), body, at);
  }

  private static void putLow(byte[] body, int at, long value, int width) {
    for (int i = 0; i < width; i++) {
      body[at + i] = (byte) (value >>> (8 * i));
    }
  }

  /** Takes the rows of a body that a {@link LinkDecoder} handed on. */
  public SampleBlock read(byte[] body) {
    int form = Le.u8(body, Layout.FORM);
    int step = SamplesLayout.stepWidth(form);
    int levelsBytes = SamplesLayout.levelsWidth(form);
    int gap = SamplesLayout.gapWidth(form);
    begin(
        Le.u32(body, SamplesLayout.NUMBER),
        Le.i64(body, SamplesLayout.STAMP),
        Le.u32(body, SamplesLayout.PERIOD),
        Le.i64(body, SamplesLayout.KNOWN));
    int count = Le.u16(body, SamplesLayout.COUNT);
    int position = Le.i32(body, SamplesLayout.POSITION);
    long header = Le.i64(body, SamplesLayout.LEVELS);
    int at = SamplesLayout.ROWS;
    for (int i = 0; i < count; i++) {
      int change = SampleRows.step(body, at, step);
      long rowLevels = SampleRows.levels(body, at + step, levelsBytes, header);
      long rowGap = SampleRows.gap(body, at + step + levelsBytes, gap);
      at += step + levelsBytes + gap;
      boolean added;
      if (SampleRows.isReading(change, step)) {
        position += change;
        added = add(position, rowLevels, rowGap);
      } else {
        added = addWithoutReading(rowLevels, rowGap);
      }
      if (!added) {
        throw new IllegalArgumentException("samples: rows that no canonical body holds");
      }
    }
    return this;
  }

  /** Sampling instants since start before the first row, modulo 2^32. */
  public long number() {
    return number;
  }

  /** Time of the first row, microseconds of the logger's clock. */
  public long stampMicros() {
    return stampMicros;
  }

  /** Nanoseconds from row to row, or 0 if each row tells its own gap. */
  public long periodNs() {
    return periodNs;
  }

  /** Contacts sampled in this block. */
  public long known() {
    return known;
  }

  /** How many rows. */
  public int rows() {
    return rows;
  }

  /** Whether a row has a reading. */
  public boolean hasReading(int row) {
    return readings[row];
  }

  /** Counts of a row that has a reading. */
  public int counts(int row) {
    return counts[row];
  }

  /** Levels of a row, cut to the known contacts. */
  public long levels(int row) {
    return levels[row];
  }

  /** Microseconds since the row before, 0 if the block has a period. */
  public long gapMicros(int row) {
    return gapMicros[row];
  }
}
