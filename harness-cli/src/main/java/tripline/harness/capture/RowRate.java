package tripline.harness.capture;

/** Samples a second of late. */
final class RowRate {
  private static final long OVER_NS = 1_000_000_000L;

  private long sinceNs;
  private long rowsThen;
  private double perS;

  RowRate(long nowNs) {
    sinceNs = nowNs;
  }

  double perS(long nowNs, long rows) {
    if (nowNs - sinceNs >= OVER_NS) {
      perS = (rows - rowsThen) * 1e9 / (nowNs - sinceNs);
      sinceNs = nowNs;
      rowsThen = rows;
    }
    return perS;
  }
}
