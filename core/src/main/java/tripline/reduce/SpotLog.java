package tripline.reduce;

import java.util.ArrayList;
import java.util.List;

/**
 * Keeps what happened until the readings about it have been seen, then cuts its fit windows. Keeps
 * at most {@value #MOST} (a contact that chatters without end must not fill the memory) and counts
 * those beyond.
 */
final class SpotLog {
  /** At most 7.5 kB each: 31 MB at the very most. */
  static final int MOST = 4096;

  /** Readings to either side that every window wants. */
  private static final long USUAL_NS = 500_000_000;

  /** What a coarse encoder's window wants. */
  private static final long LONGEST_NS = 2_000_000_000;

  private final WindowCutter cutter;
  private final ReductionSettings settings;
  private final List<Happening> waiting = new ArrayList<>();
  private final List<Placed> cut = new ArrayList<>();
  private long nextReadyNs = Long.MAX_VALUE;
  private long leftOut;
  private long firstLeftOutNs;
  private long lastLeftOutNs;

  /** A happening and the windows about it. */
  record Placed(Happening happening, Spot spot) {}

  SpotLog(WindowCutter cutter, ReductionSettings settings) {
    this.cutter = cutter;
    this.settings = settings;
  }

  void await(Happening happening) {
    if (cut.size() + waiting.size() >= MOST) {
      firstLeftOutNs = leftOut == 0 ? happening.atNs() : firstLeftOutNs;
      lastLeftOutNs = happening.atNs();
      leftOut++;
      return;
    }
    waiting.add(happening);
    nextReadyNs = Math.min(nextReadyNs, centreNs(happening) + USUAL_NS);
  }

  private long centreNs(Happening happening) {
    return happening.atNs() + happening.skewNs(settings);
  }

  /** When something will be due, ns; {@link Long#MAX_VALUE} where nothing is waiting. */
  long nextReadyNs() {
    return nextReadyNs;
  }

  /** Cuts the windows of what lies far enough back. */
  void onTime(long nowNs) {
    if (nowNs >= nextReadyNs) {
      cutReady(nowNs);
    }
  }

  private void cutReady(long nowNs) {
    nextReadyNs = Long.MAX_VALUE;
    int kept = 0;
    for (Happening happening : waiting) {
      long centreNs = centreNs(happening);
      long readyNs = centreNs + (cutter.mayBeCoarse(centreNs) ? LONGEST_NS : USUAL_NS);
      if (nowNs >= readyNs) {
        cut.add(place(happening));
      } else {
        nextReadyNs = Math.min(nextReadyNs, readyNs);
        waiting.set(kept++, happening);
      }
    }
    waiting.subList(kept, waiting.size()).clear();
  }

  private Placed place(Happening happening) {
    long centreNs = centreNs(happening);
    return new Placed(happening, new Spot(centreNs, cutter.cut(centreNs)));
  }

  /** All so far in order of time, as if the recording ended now. */
  List<Placed> all() {
    List<Placed> all = new ArrayList<>(cut);
    for (Happening happening : waiting) {
      all.add(place(happening));
    }
    all.sort((a, b) -> Long.compare(a.happening().atNs(), b.happening().atNs()));
    return all;
  }

  /** Adds what was left out, if anything was. */
  void faults(List<ReadingFault> faults) {
    if (leftOut > 0) {
      faults.add(
          new ReadingFault(
              ReadingFault.Kind.EVENTS_LEFT_OUT, firstLeftOutNs, lastLeftOutNs, leftOut));
    }
  }

  /** Holds what another one holds. */
  void become(SpotLog other) {
    waiting.clear();
    waiting.addAll(other.waiting);
    cut.clear();
    cut.addAll(other.cut);
    nextReadyNs = other.nextReadyNs;
    leftOut = other.leftOut;
    firstLeftOutNs = other.firstLeftOutNs;
    lastLeftOutNs = other.lastLeftOutNs;
  }
}
