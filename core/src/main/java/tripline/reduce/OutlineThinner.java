package tripline.reduce;

import java.util.ArrayList;
import java.util.List;

/**
 * Keeps at most {@value #MOST} points of a path, evenly spread in time: when full, every second one
 * goes.
 */
final class OutlineThinner {
  static final int MOST = 4096;

  private final long[] timeNs = new long[MOST];
  private final double[] reading = new double[MOST];
  private int size;
  private long spacingNs = 10_000_000;
  private long nextNs = Long.MIN_VALUE;

  /** A reading. Hot: mostly a comparison. */
  void onReading(long now, double value) {
    if (now >= nextNs) {
      keep(now, value);
    }
  }

  /** When a reading is next kept, ns. */
  long nextNs() {
    return nextNs;
  }

  private void keep(long now, double value) {
    if (size == MOST) {
      for (int i = 0; i < MOST / 2; i++) {
        timeNs[i] = timeNs[2 * i];
        reading[i] = reading[2 * i];
      }
      size = MOST / 2;
      spacingNs *= 2;
    }
    timeNs[size] = now;
    reading[size] = value;
    size++;
    nextNs = now + spacingNs;
  }

  /**
   * The outline so far.
   *
   * @param lastNs time of the last reading, ns
   * @param last that reading
   */
  Outline outline(long lastNs, double last) {
    List<Outline.Point> points = new ArrayList<>(size + 1);
    for (int i = 0; i < size; i++) {
      points.add(new Outline.Point(timeNs[i], reading[i]));
    }
    if (size > 0 && lastNs > timeNs[size - 1]) {
      points.add(new Outline.Point(lastNs, last));
    }
    return new Outline(points);
  }

  /** Holds what another one holds. */
  void become(OutlineThinner other) {
    size = other.size;
    System.arraycopy(other.timeNs, 0, timeNs, 0, size);
    System.arraycopy(other.reading, 0, reading, 0, size);
    spacingNs = other.spacingNs;
    nextNs = other.nextNs;
  }
}
