package tripline.truth;

import java.util.Arrays;

/** Stamps of the rows a logger wrote, rising: what the floor of a change is computed from. */
public final class Stamps {
  private long[] ns = new long[4096];
  private int size;

  void clear() {
    size = 0;
  }

  void add(long stampNs) {
    if (size == ns.length) {
      ns = Arrays.copyOf(ns, 2 * size);
    }
    ns[size++] = stampNs;
  }

  public int size() {
    return size;
  }

  /** How many lie in [from, to]. */
  public int within(long fromNs, long toNs) {
    return firstAtOrAfter(toNs + 1) - firstAtOrAfter(fromNs);
  }

  /** Distance of the stamps around a time, ns; -1 where there is none on one side. */
  public long gapAround(long timeNs) {
    int after = firstAtOrAfter(timeNs);
    return after == 0 || after == size ? -1 : ns[after] - ns[after - 1];
  }

  private int firstAtOrAfter(long stampNs) {
    int at = Arrays.binarySearch(ns, 0, size, stampNs);
    return at >= 0 ? at : -at - 1;
  }
}
