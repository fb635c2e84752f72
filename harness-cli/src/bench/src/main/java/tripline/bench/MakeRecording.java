package tripline.bench;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import tripline.sample.Channels;

/**
 * Writes a recording of a wanted size and the job sheet it conforms to: strokes by hand from stop
 * to stop at an even pace, sixteen contacts on eight cams, a position of four decimals with noise.
 *
 * <p>Arguments: {@code JOB RECORDING MEGABYTES [HERTZ [STROKES]]}. Without a number of strokes it
 * makes one every hundred seconds, at most twenty.
 */
public final class MakeRecording {
  private static final int CONTACTS = 16;

  private static final int SPAN_COUNTS = 310_000;
  private static final int COUNTS_PER_TURN = 10_000;

  /** The reading at the closed stop: no reading is negative, whatever the noise. */
  private static final int ZERO_COUNTS = 10_000;

  private static final double NOISE_COUNTS = 5;
  private static final double SECONDS_A_STROKE = 100;
  private static final int MOST_STROKES = 20;
  private static final int MICROS_PER_S = 1_000_000;

  /** Cams from the closed end to the open one, and where they trip, counts from the closed stop. */
  private static final String[] CAMS = {"close", "a", "b", "c", "d", "e", "f", "open"};

  private static final int[] PERCENT = {0, 12, 25, 40, 60, 75, 88, 0};
  private static final int BACKOFF_COUNTS = 5_000;

  private final long rows;
  private final int hertz;
  private final int strokes;

  private MakeRecording(long rows, int hertz, int strokes) {
    this.rows = rows;
    this.hertz = hertz;
    this.strokes = strokes;
  }

  /** Writes what the arguments say. */
  public static void main(String[] arguments) throws IOException {
    long bytes = (long) (Double.parseDouble(arguments[2]) * 1e6);
    int hertz = arguments.length > 3 ? Integer.parseInt(arguments[3]) : 1000;
    int wanted = arguments.length > 4 ? Integer.parseInt(arguments[4]) : 0;
    Files.writeString(Path.of(arguments[0]), sheet());
    try (OutputStream out =
        new BufferedOutputStream(Files.newOutputStream(Path.of(arguments[1])), 1 << 16)) {
      of(bytes, hertz, wanted).write(out);
    }
  }

  /**
   * A recording.
   *
   * @param bytes about how many
   * @param wanted how many strokes, or 0 for one every hundred seconds, at most twenty
   */
  public static MakeRecording of(long bytes, int hertz, int wanted) {
    int rowBytes = new Line().row(1_000L * MICROS_PER_S, decimals(hertz), 15 * 10_000, 0, 0, "");
    long rows = bytes / rowBytes;
    double seconds = (double) rows / hertz;
    int usual = 2 * (int) Math.max(1, Math.round(seconds / SECONDS_A_STROKE / 2));
    int strokes = Math.min(MOST_STROKES, usual);
    return new MakeRecording(rows, hertz, wanted > 0 ? wanted : strokes);
  }

  /** The names of its contacts. */
  public static Channels channels() {
    return new Channels(IntStream.rangeClosed(1, CONTACTS).mapToObj(i -> "k" + i).toList());
  }

  /** Writes it. */
  public void write(OutputStream out) throws IOException {
    SplittableRandom random = new SplittableRandom(7);
    int[] noise = new int[1 << 16];
    Arrays.setAll(noise, i -> (int) Math.round(NOISE_COUNTS * gaussian(random)));
    StringBuilder header =
        new StringBuilder("# tripline-recording: 1\n# drive: hand\ntime,position");
    for (int i = 1; i <= CONTACTS; i++) {
      header.append(",k").append(i);
    }
    out.write(header.append(",mark\n").toString().getBytes(StandardCharsets.US_ASCII));
    Line line = new Line();
    int decimals = decimals(hertz);
    int markedAt = -1;
    for (long row = 0; row < rows; row++) {
      double at = (row + 0.5) / rows * strokes;
      int stroke = (int) at;
      double way = Math.min(1, Math.max(0, (at - stroke - 0.4) / 0.55));
      double travel = stroke % 2 == 0 ? way : 1 - way;
      int counts = (int) Math.round(travel * SPAN_COUNTS);
      String mark = "";
      if (stroke != markedAt && at - stroke > 0.2) {
        markedAt = stroke;
        mark = stroke % 2 == 0 ? "closed-stop" : "open-stop";
      }
      int off = noise[(int) (row * 31 & noise.length - 1)];
      long micros = Math.round((double) row * MICROS_PER_S / hertz);
      int length =
          line.row(micros, decimals, ZERO_COUNTS + counts + off, counts, CONTACTS, mark);
      out.write(line.bytes, 0, length);
    }
  }

  private static int decimals(int hertz) {
    return hertz <= 1_000 ? 3 : hertz <= 10_000 ? 4 : 6;
  }

  /** Sum of twelve even ones less six: near enough to normal for noise. */
  private static double gaussian(SplittableRandom random) {
    double sum = -6;
    for (int i = 0; i < 12; i++) {
      sum += random.nextDouble();
    }
    return sum;
  }

  private static int tripCounts(int cam) {
    if (cam == 0) {
      return BACKOFF_COUNTS;
    }
    return cam == CAMS.length - 1
        ? SPAN_COUNTS - BACKOFF_COUNTS
        : SPAN_COUNTS / 100 * PERCENT[cam];
  }

  /** One row as bytes. */
  private static final class Line {
    final byte[] bytes = new byte[128];
    private int end;

    int row(long micros, int decimals, int reading, int counts, int contacts, String mark) {
      end = 0;
      long perUnit = decimals == 3 ? 1_000 : decimals == 4 ? 10_000 : MICROS_PER_S;
      fixed(micros / (MICROS_PER_S / perUnit), perUnit);
      bytes[end++] = ',';
      fixed(reading, COUNTS_PER_TURN);
      for (int i = 0; i < CONTACTS; i++) {
        boolean beyond = contacts > 0 && counts > tripCounts(i / 2);
        bytes[end++] = ',';
        bytes[end++] = (byte) (beyond == (i % 2 == 0) ? '1' : '0');
      }
      bytes[end++] = ',';
      for (int i = 0; i < mark.length(); i++) {
        bytes[end++] = (byte) mark.charAt(i);
      }
      bytes[end++] = '\n';
      return end;
    }

    private void fixed(long parts, long perUnit) {
      whole(parts / perUnit);
      bytes[end++] = '.';
      for (long unit = perUnit / 10; unit > 0; unit /= 10) {
        bytes[end++] = (byte) ('0' + parts / unit % 10);
      }
    }

    private void whole(long n) {
      long unit = 1;
      while (unit * 10 <= n) {
        unit *= 10;
      }
      for (; unit > 0; unit /= 10) {
        bytes[end++] = (byte) ('0' + n / unit % 10);
      }
    }
  }

  /** The job sheet that every such recording conforms to. */
  public static String sheet() {
    StringBuilder sheet =
        new StringBuilder(
            """
            [job]
            tag = "CW-114"
            description = "Cooling-water return isolation, DN 300 wedge gate valve"

            [travel]
            span = 31.0
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
            """);
    for (int cam = 0; cam < CAMS.length; cam++) {
      sheet.append("\n[[cam]]\nname = \"%s\"\n".formatted(CAMS[cam]));
      if (PERCENT[cam] > 0) {
        sheet.append(
            "trip = { from = \"closed\", percent = %d.0, tolerance = 1.0 }\n"
                .formatted(PERCENT[cam]));
      }
    }
    for (int i = 0; i < CONTACTS; i++) {
      boolean openSide = i % 2 == 0;
      String role =
          i == 0 ? "limit-closing" : i == CONTACTS - 1 ? "limit-opening" : "interlock";
      sheet.append(
          "\n[[contact]]\nname = \"%d%s\"\nchannel = \"k%d\"\ncam = \"%s\"\nclosed = \"%s\"\nrole = \"%s\"\n"
              .formatted(
                  i + 1,
                  openSide ? "3-" + (i + 1) + "4" : "1-" + (i + 1) + "2",
                  i + 1,
                  CAMS[i / 2],
                  openSide ? "open-side" : "closed-side",
                  role));
    }
    return sheet.toString();
  }
}
