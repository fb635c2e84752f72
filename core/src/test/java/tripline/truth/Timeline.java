package tripline.truth;

import java.util.Arrays;

/**
 * Electrical edges of all channels in order of time: what a logger's inputs see. Bits are channel
 * indexes.
 */
public final class Timeline {
  private final long initially;
  private final long[] timeNs;
  private final long[] mask;
  private final int size;

  private Timeline(long initially, long[] timeNs, long[] mask, int size) {
    this.initially = initially;
    this.timeNs = timeNs;
    this.mask = mask;
    this.size = size;
  }

  public int size() {
    return size;
  }

  /** States at time 0. */
  public long initially() {
    return initially;
  }

  /** Time of an edge, ns. */
  public long timeNs(int edge) {
    return timeNs[edge];
  }

  /** The bit of the channel that toggles. */
  public long toggles(int edge) {
    return mask[edge];
  }

  /** Collects edges in any order. */
  static final class Builder {
    private final long initially;
    private long[] timeNs = new long[256];
    private long[] mask = new long[256];
    private int size;

    Builder(long initially) {
      this.initially = initially;
    }

    void toggle(long atNs, int channel) {
      if (size == timeNs.length) {
        timeNs = Arrays.copyOf(timeNs, 2 * size);
        mask = Arrays.copyOf(mask, 2 * size);
      }
      int i = size++;
      for (; i > 0 && timeNs[i - 1] > atNs; i--) {
        timeNs[i] = timeNs[i - 1];
        mask[i] = mask[i - 1];
      }
      timeNs[i] = atNs;
      mask[i] = 1L << channel;
    }

    Timeline build() {
      return new Timeline(initially, timeNs, mask, size);
    }
  }
}
