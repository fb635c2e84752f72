package tripline.harness.capture;

/** Tells once when samples stop coming from a logger that is there. */
final class Dearth {
  private static final long AFTER_NS = 5_000_000_000L;

  private long sinceNs;
  private long rows;
  private boolean told;

  Dearth(long nowNs) {
    sinceNs = nowNs;
  }

  /** Whether it is to be told now. */
  boolean begins(long nowNs, long rowsNow) {
    if (rowsNow != rows) {
      rows = rowsNow;
      sinceNs = nowNs;
      told = false;
    }
    boolean tell = !told && nowNs - sinceNs > AFTER_NS;
    told |= tell;
    return tell;
  }
}
