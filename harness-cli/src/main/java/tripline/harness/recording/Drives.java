package tripline.harness.recording;

import java.util.List;
import java.util.Optional;
import tripline.job.JobSheet;
import tripline.reduce.MarkPoint;
import tripline.reduce.Trace;
import tripline.sample.Drive;
import tripline.sample.Mark;
import tripline.travel.Contactors;
import tripline.travel.RecordingTrace.Told;

/**
 * What moved the valve.
 *
 * @param drive as a whole
 * @param told how that is known
 */
record Drives(Drive drive, Told told) {

  /**
   * What was stated; else what the contactors tell, stroke by stroke; else, with a notice, the hand
   * if somebody marked a stop, which is felt at the handwheel, and the motor if nobody did: a hand
   * stroke taken for one of the motor loses its hard stops, the other way round a stop would be
   * invented.
   *
   * @param how words that state it
   */
  static Drives of(
      Optional<Drive> stated,
      String how,
      List<Trace> traces,
      JobSheet sheet,
      List<String> notices) {
    if (stated.isPresent()) {
      return new Drives(stated.get(), Told.STATED);
    }
    List<Contactors> seen = traces.stream().map(t -> Contactors.of(t, sheet)).toList();
    if (seen.stream().anyMatch(Contactors::everIn)) {
      return new Drives(Drive.MOTOR, Told.BY_CONTACTORS);
    }
    if (!seen.isEmpty() && seen.stream().allMatch(Contactors::tellAll)) {
      notices.add(unstated(how, "by hand: no contactor was in"));
      return new Drives(Drive.HAND, Told.BY_CONTACTORS);
    }
    if (traces.stream().flatMap(t -> t.marks().stream()).anyMatch(Drives::marksStop)) {
      notices.add(unstated(how, "by hand: a stop was marked"));
      return new Drives(Drive.HAND, Told.STATED);
    }
    notices.add(unstated(how, "motor: where it stood still is no hard stop"));
    return new Drives(Drive.MOTOR, Told.STATED);
  }

  private static boolean marksStop(MarkPoint point) {
    return point.mark() == Mark.CLOSED_STOP || point.mark() == Mark.OPEN_STOP;
  }

  private static String unstated(String how, String taken) {
    return "what drove the valve is not stated (%s), taken as %s".formatted(how, taken);
  }
}
