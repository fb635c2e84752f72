package tripline.job;

import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/** What the logger can tell apart against what it is asked to judge. */
final class LoggerSense {
  /** Longer than any contact bounces: a stroke past two trip points takes less. */
  private static final long LONG_SETTLE_NS = 500_000_000L;

  private LoggerSense() {}

  static void check(JobSheet sheet, Remarks remarks) {
    PositionChannel position = sheet.position();
    if (sheet.settleNs() > LONG_SETTLE_NS) {
      remarks.doubt(
          "logger.settle_s",
          "a contact must hold for %s s to count as settled: shorter stays are taken for bounce"
              .formatted(Remarks.figure(sheet.settleNs() / 1e9)));
    }
    if (position.modulus().isPresent()) {
      modulus(position, position.modulus().getAsDouble(), remarks);
    }
    tightest(sheet).ifPresent(tolerance -> resolves(sheet, tolerance, remarks));
  }

  private static void modulus(PositionChannel position, double modulus, Remarks remarks) {
    double turns = modulus * Math.abs(position.turnsPerUnit());
    if (modulus <= position.resolution()) {
      remarks.error(
          "position.modulus",
          "modulus is %s, expected more than one count, which is %s"
              .formatted(Remarks.figure(modulus), Remarks.figure(position.resolution())),
          "position.resolution");
    } else if (turns < 0.5) {
      remarks.doubt(
          "position.modulus",
          "the reading wraps every %s turns: between two samples the drive must move less than half"
                  .formatted(Remarks.figure(turns))
              + " of that",
          "position.turns_per_unit");
    }
  }

  private static void resolves(JobSheet sheet, double tolerance, Remarks remarks) {
    PositionChannel position = sheet.position();
    double count = position.resolution() * Math.abs(position.turnsPerUnit());
    String[] rests = {"position.turns_per_unit", "travel.span", "cam", "ends"};
    if (count > tolerance) {
      remarks.doubt(
          "position.resolution",
          "one count is %s turns, the tightest tolerance %s: little could be accepted"
              .formatted(Remarks.figure(count), Remarks.figure(tolerance)),
          rests);
    }
    OptionalDouble span = sheet.travel().spanTurns();
    double drift = position.scaleU() * span.orElse(0);
    if (1.645 * drift > tolerance) {
      remarks.doubt(
          "position.scale_u",
          "the scale alone makes %s turns (k = 1) over the span, the tightest tolerance is %s: figures"
                  .formatted(Remarks.figure(drift), Remarks.figure(tolerance))
              + " far from the datum stay undecided",
          rests);
    }
  }

  private static OptionalDouble tightest(JobSheet sheet) {
    OptionalDouble span = sheet.travel().spanTurns();
    DoubleStream trips =
        sheet.cams().stream()
            .flatMap(c -> c.trips().stream())
            .filter(t -> t.unit() == TripPlan.Unit.TURNS || span.isPresent())
            .mapToDouble(t -> t.toleranceTurns(span.orElse(0)));
    DoubleStream ends =
        Stream.of(End.values())
            .filter(end -> !LimitSense.limits(sheet, end).isEmpty())
            .mapToDouble(end -> sheet.end(end).toleranceTurns());
    return DoubleStream.concat(trips, ends).min();
  }
}
