package tripline.job;

/**
 * How acceptance strokes are judged.
 *
 * @param strokes strokes each way, &gt;= 2
 * @param confidence of the statistical tolerance interval, 0..1
 * @param share of future trips the interval is to hold, 0..1
 */
public record Acceptance(int strokes, double confidence, double share) {
  /** What holds where the sheet says nothing. */
  public static final Acceptance DEFAULT = new Acceptance(3, 0.95, 0.95);
}
