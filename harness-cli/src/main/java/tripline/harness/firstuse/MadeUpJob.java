package tripline.harness.firstuse;

import java.nio.charset.StandardCharsets;

/** A valve that does not exist, stroked by hand once each way: as little as has everything. */
final class MadeUpJob {
  static final String SHEET =
      """
      [job]
      tag = "FIRST-USE"
      [travel]
      span = 10.0
      span_tolerance = 0.5
      [position]
      side = "drive"
      turns_per_unit = 1.0
      resolution = 0.0001
      [ends.closed]
      seat = "limit"
      backoff = 0.5
      tolerance = 0.1
      stop_u = 0.01
      [ends.open]
      seat = "limit"
      backoff = 0.5
      tolerance = 0.1
      stop_u = 0.01
      [[cam]]
      name = "close"
      [[cam]]
      name = "middle"
      trip = { from = "closed", percent = 50.0, tolerance = 1.0 }
      [[cam]]
      name = "open"
      [[contact]]
      name = "21-22"
      channel = "k1"
      cam = "close"
      closed = "open-side"
      role = "limit-closing"
      [[contact]]
      name = "13-14"
      channel = "k2"
      cam = "middle"
      closed = "closed-side"
      role = "interlock"
      [[contact]]
      name = "31-32"
      channel = "k3"
      cam = "open"
      closed = "closed-side"
      role = "limit-opening"
      """;

  private static final int RATE_HZ = 50;
  private static final double SPAN_TURNS = 10;
  private static final double BACKOFF_TURNS = 0.5;
  private static final double TURNS_PER_S = 1.25;
  private static final double REST_S = 1;

  /** Some readings of noise, counts. */
  private static final int[] NOISE = {3, -2, 0, 5, -4, 1, -6, 2, -1, 4, -3};

  private static final int COUNTS_PER_TURN = 10_000;

  private MadeUpJob() {}

  /** Its recording. */
  static byte[] recording() {
    StringBuilder csv = new StringBuilder("# drive: hand\ntime,position,k1,k2,k3,mark\n");
    double strokeS = REST_S + SPAN_TURNS / TURNS_PER_S;
    int rows = (int) ((2 * strokeS + REST_S) * RATE_HZ);
    for (int row = 0; row < rows; row++) {
      double s = (double) row / RATE_HZ;
      double up = Math.min(SPAN_TURNS, Math.max(0, s - REST_S) * TURNS_PER_S);
      double down = Math.min(SPAN_TURNS, Math.max(0, s - strokeS - REST_S) * TURNS_PER_S);
      double x = up - down;
      int counts = (int) Math.rint((1 + x) * COUNTS_PER_TURN) + NOISE[row % NOISE.length];
      fixed(csv, row * 1_000 / RATE_HZ, 1_000).append(',');
      fixed(csv, counts, COUNTS_PER_TURN)
          .append(x > BACKOFF_TURNS ? ",1" : ",0")
          .append(x > SPAN_TURNS / 2 ? ",0" : ",1")
          .append(x > SPAN_TURNS - BACKOFF_TURNS ? ",0," : ",1,")
          .append(mark(row, strokeS))
          .append('\n');
    }
    return csv.toString().getBytes(StandardCharsets.US_ASCII);
  }

  private static String mark(int row, double strokeS) {
    if (row == RATE_HZ / 2) {
      return "closed-stop";
    }
    return row == (int) ((strokeS + REST_S / 2) * RATE_HZ) ? "open-stop" : "";
  }

  private static StringBuilder fixed(StringBuilder text, int parts, int perUnit) {
    text.append(parts / perUnit).append('.');
    for (int unit = perUnit / 10; unit > 0; unit /= 10) {
      text.append((char) ('0' + parts / unit % 10));
    }
    return text;
  }
}
