package tripline.verdict;

import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tripline.job.JobSheet;
import tripline.job.SensorSide;
import tripline.result.Result.SensorResult;
import tripline.result.Result.StopResult;
import tripline.result.Result.TravelResult;
import tripline.travel.Coordinate;
import tripline.travel.Datum;
import tripline.travel.HardStop;

/** Stops, span and lost motion as the result writes them. */
final class TravelResults {
  private static final String HANDWHEEL_NOTE =
      "At most this much: the smallest difference seen between opening and closing trip points,"
          + " in which a cam's own differential cannot be told from lost motion.";
  private static final String DRIVE_NOTE =
      "The position sensor is on the drive side: lost motion of the handwheel does not show.";

  private TravelResults() {}

  static TravelResult of(Coordinate coordinate, JobSheet sheet) {
    return new TravelResult(
        coordinate.datum().word(),
        datumPosition(coordinate, sheet),
        new SensorResult(
            sheet.position().side().name().toLowerCase(Locale.ROOT),
            sheet.position().turnsPerUnit(),
            sheet.position().scaleU()),
        stop(coordinate.closedStop()),
        stop(coordinate.openStop()),
        Figures.measured(coordinate.span()),
        Figures.measured(coordinate.lostMotion()),
        note(coordinate, sheet));
  }

  private static double datumPosition(Coordinate coordinate, JobSheet sheet) {
    return coordinate.datum() == Datum.OPEN_STOP ? sheet.travel().spanTurns().orElse(0) : 0;
  }

  private static @Nullable String note(Coordinate coordinate, JobSheet sheet) {
    if (sheet.position().side() == SensorSide.DRIVE) {
      return DRIVE_NOTE;
    }
    return coordinate.lostMotion().isPresent() ? HANDWHEEL_NOTE : null;
  }

  private static @Nullable StopResult stop(Optional<HardStop> stop) {
    return stop.map(s -> new StopResult(s.reading().value(), s.reading().u(), s.source().word()))
        .orElse(null);
  }
}
