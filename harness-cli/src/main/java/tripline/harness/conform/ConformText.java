package tripline.harness.conform;

import java.io.PrintWriter;
import java.math.BigDecimal;
import tripline.harness.report.SafeText;
import tripline.link.Identity;

/** A report in words: a line a duty, and below it what was seen against it. */
public final class ConformText {
  private static final String INDENT = " ".repeat(18);

  private ConformText() {}

  /** Writes a report. */
  public static void write(Report report, PrintWriter out) {
    head(report.logger(), out);
    for (Report.Line line : report.lines()) {
      out.println(
          "%-5s %-10s  %s"
              .formatted(line.duty().clause(), line.outcome().word(), line.duty().sentence()));
      line.seen().forEach(what -> out.println(INDENT + SafeText.line(what)));
    }
    out.println();
    out.println(
        "%d hold, %s, %d not seen, %d not tried"
            .formatted(
                report.count(Outcome.HOLDS),
                report.count(Outcome.FAILS) == 1
                    ? "1 FAILS"
                    : report.count(Outcome.FAILS) + " FAIL",
                report.count(Outcome.NOT_SEEN),
                report.count(Outcome.NOT_TRIED)));
  }

  private static void head(Identity logger, PrintWriter out) {
    String encodings =
        switch (logger.encodings()) {
          case 1 -> "frames";
          case 2 -> "lines";
          default -> "frames and lines";
        };
    out.println(
        SafeText.line(
            "%s %s, firmware %s; link %d.%d"
                .formatted(
                    logger.model(),
                    logger.serial(),
                    logger.firmware(),
                    logger.major(),
                    logger.minor())));
    out.println(
        "%d position, %d contacts; clock of %d bits; %s; %s to %s Hz"
            .formatted(
                logger.positions(),
                logger.contacts(),
                logger.clockBits(),
                encodings,
                hertz(logger.rateMinMilliHz()),
                hertz(logger.rateMaxMilliHz())));
    out.println();
  }

  private static String hertz(long milliHz) {
    return BigDecimal.valueOf(milliHz, 3).stripTrailingZeros().toPlainString();
  }
}
