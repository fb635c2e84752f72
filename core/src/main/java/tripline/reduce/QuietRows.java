package tripline.reduce;

/**
 * A stretch of a batch in which nothing happens: each row an ordinary distance after the one
 * before, its reading near the last one. It may end with a row at which something is due.
 */
final class QuietRows {
  private final RowBatch batch;
  private int from;
  private int end;
  private long distanceNs;
  private boolean evenlySpaced;

  QuietRows(RowBatch batch) {
    this.batch = batch;
  }

  /**
   * Looks how far a stretch goes.
   *
   * @param first row it would begin with
   * @param beforeNs time of the row before, ns
   * @param before reading of the row before
   * @param dueNs when something is due: the first row then or later is the last, ns
   * @param untilNs no row then or later is quiet, ns
   * @param longestNs longest ordinary distance, ns
   * @param widest widest ordinary step, reading units
   * @return whether there is a row in it
   */
  boolean find(
      int first,
      long beforeNs,
      double before,
      long dueNs,
      long untilNs,
      long longestNs,
      double widest) {
    final long[] times = batch.timeNs;
    final double[] readings = batch.reading;
    final int size = batch.size();
    final long firstDistanceNs = times[first] - beforeNs;
    long timeNs = beforeNs;
    double reading = before;
    long uneven = 0;
    int row = first;
    while (row < size && (timeNs < dueNs || row == first)) {
      final long nextNs = times[row];
      final double next = readings[row];
      final long distance = nextNs - timeNs;
      if (distance <= 0
          || distance > longestNs
          || nextNs >= untilNs
          || !(Math.abs(next - reading) <= widest)) {
        break;
      }
      uneven |= distance ^ firstDistanceNs;
      timeNs = nextNs;
      reading = next;
      row++;
    }
    from = first;
    end = row;
    distanceNs = firstDistanceNs;
    evenlySpaced = uneven == 0;
    return row > first;
  }

  int from() {
    return from;
  }

  /** One past the last row. */
  int end() {
    return end;
  }

  int rows() {
    return end - from;
  }

  /** Times of the batch's rows, ns; of these, those from {@link #from} to {@link #end}. */
  long[] times() {
    return batch.timeNs;
  }

  /** Their readings. */
  double[] readings() {
    return batch.reading;
  }

  /** Time of the last row, ns. */
  long lastNs() {
    return batch.timeNs[end - 1];
  }

  /** Reading of the last row. */
  double last() {
    return batch.reading[end - 1];
  }

  /** Adds the distances, from the row before to the last of these. */
  void addTo(Rhythm rhythm, long beforeNs) {
    if (evenlySpaced) {
      rhythm.add(distanceNs, rows());
      return;
    }
    long timeNs = beforeNs;
    for (int row = from; row < end; row++) {
      long nextNs = batch.timeNs[row];
      rhythm.add(nextNs - timeNs);
      timeNs = nextNs;
    }
  }
}
