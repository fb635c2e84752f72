package tripline.harness.serial;

import java.util.Comparator;
import java.util.List;

/**
 * A line rate that serial hardware knows. Ports take any number without a word (a pseudo terminal
 * even 1), and a mistyped one then looks like a silent logger.
 *
 * @param bitsPerSecond one of {@link #KNOWN}
 */
public record BaudRate(int bitsPerSecond) {
  /** Rates that UARTs and USB adapters offer (common practice), rising. */
  public static final List<Integer> KNOWN =
      List.of(
          1200, 2400, 4800, 9600, 14400, 19200, 28800, 38400, 57600, 76800, 115200, 230400, 250000,
          460800, 500000, 576000, 921600, 1000000, 1152000, 1500000, 2000000, 2500000, 3000000,
          3500000, 4000000);

  /** The rate of the link's specification (section 1). */
  public static final BaudRate USUAL = new BaudRate(115200);

  /**
   * @throws IllegalArgumentException for a rate that is not among {@link #KNOWN}, naming the
   *     nearest
   */
  public BaudRate {
    if (!KNOWN.contains(bitsPerSecond)) {
      throw new IllegalArgumentException(
          "%d is no usual baud rate; the nearest is %d"
              .formatted(bitsPerSecond, nearest(bitsPerSecond)));
    }
  }

  private static int nearest(long rate) {
    return KNOWN.stream().min(Comparator.comparingLong(k -> Math.abs(k - rate))).orElseThrow();
  }
}
