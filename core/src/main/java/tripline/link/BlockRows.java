package tripline.link;

import org.jspecify.annotations.Nullable;
import tripline.sample.SampleSink;

/**
 * The rows of one block of samples, taken column by column and handed on as stretches of rows
 * alike. A body that a {@link LinkDecoder} hands on tells gaps if and only if it has no period
 * ({@link SamplesLayout#rowsFit}), so that its stamps rise where it tells none. Reused; fixed
 * footprint: 24 bytes a row.
 */
final class BlockRows {
  private final long[] timesNs = new long[SamplesLayout.MOST_ROWS];
  private final double[] readings = new double[SamplesLayout.MOST_ROWS];
  private final long[] levels = new long[SamplesLayout.MOST_ROWS];
  private int size;
  private boolean levelsHold;
  private boolean evenlySpaced;

  /**
   * Takes the rows of a body that a {@link LinkDecoder} handed on.
   *
   * @param firstNs time of the first row, ns
   * @param position its position channel; null: no row has a reading
   */
  void read(byte[] body, long firstNs, @Nullable ChannelDescription position) {
    int form = Le.u8(body, Layout.FORM);
    int stepWidth = SamplesLayout.stepWidth(form);
    int levelsWidth = SamplesLayout.levelsWidth(form);
    int gapWidth = SamplesLayout.gapWidth(form);
    int width = stepWidth + levelsWidth + gapWidth;
    size = Le.u16(body, SamplesLayout.COUNT);
    levelsHold = levelsWidth == 0;
    evenlySpaced = gapWidth == 0;
    readPositions(body, stepWidth, width, position);
    readLevels(body, SamplesLayout.ROWS + stepWidth, levelsWidth, width);
    readTimes(body, SamplesLayout.ROWS + stepWidth + levelsWidth, gapWidth, width, firstNs);
  }

  private void readPositions(
      byte[] body, int stepWidth, int width, @Nullable ChannelDescription position) {
    double numerator = position == null ? Double.NaN : position.numerator();
    double denominator = position == null ? 1 : position.denominator();
    final double[] readings = this.readings;
    final int size = this.size;
    int counts = Le.i32(body, SamplesLayout.POSITION);
    int at = SamplesLayout.ROWS;
    for (int i = 0; i < size; i++) {
      int step = SampleRows.step(body, at, stepWidth);
      if (SampleRows.isReading(step, stepWidth)) {
        counts += step;
        readings[i] = counts * numerator / denominator;
      } else {
        readings[i] = Double.NaN;
      }
      at += width;
    }
  }

  private void readLevels(byte[] body, int from, int levelsWidth, int width) {
    long header = Le.i64(body, SamplesLayout.LEVELS);
    levels[0] = SampleRows.levels(body, from, levelsWidth, header);
    if (!levelsHold) {
      for (int i = 1; i < size; i++) {
        levels[i] = SampleRows.levels(body, from + i * width, levelsWidth, header);
      }
    }
  }

  private void readTimes(byte[] body, int from, int gapWidth, int width, long firstNs) {
    long periodNs = Le.u32(body, SamplesLayout.PERIOD);
    final long[] timesNs = this.timesNs;
    final int size = this.size;
    long timeNs = firstNs;
    if (evenlySpaced) {
      for (int i = 0; i < size; i++) {
        timesNs[i] = timeNs;
        timeNs += periodNs;
      }
      return;
    }
    for (int i = 0; i < size; i++) {
      timeNs += SampleRows.gap(body, from + i * width, gapWidth) * 1000;
      timesNs[i] = timeNs;
    }
  }

  int size() {
    return size;
  }

  /** Time of a row, ns. */
  long timeNs(int row) {
    return timesNs[row];
  }

  /** Levels of a row as sent. */
  long levels(int row) {
    return levelsHold ? levels[0] : levels[row];
  }

  /**
   * One past the last of the rows from this one on that have its levels, rise in time and come
   * before another time.
   */
  int endOfLike(int row, long beforeNs) {
    if (levelsHold && evenlySpaced && timesNs[size - 1] < beforeNs) {
      return size;
    }
    int end = row + 1;
    while (end < size
        && levels(end) == levels(row)
        && timesNs[end] > timesNs[end - 1]
        && timesNs[end] < beforeNs) {
      end++;
    }
    return end;
  }

  /** Hands on such rows. */
  void send(SampleSink into, int from, int to, long known, long closed) {
    into.onRows(timesNs, readings, from, to, known, closed);
  }
}
