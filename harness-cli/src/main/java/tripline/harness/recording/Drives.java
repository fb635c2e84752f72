package tripline.harness.recording;

import java.util.List;
import java.util.Optional;
import tripline.job.JobSheet;
import tripline.reduce.Trace;
import tripline.sample.Drive;
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
   * What was stated; else what the contactors tell, stroke by stroke; else the motor, with a
   * notice: a hand stroke taken for one of the motor loses its hard stops, the other way round a
   * stop would be invented.
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
    boolean tell = !seen.isEmpty() && seen.stream().allMatch(Contactors::tellAll);
    notices.add(
        "what drove the valve is not stated (%s), %s"
            .formatted(
                how,
                tell
                    ? "taken as by hand: no contactor was in"
                    : "taken as motor: where it stood still is no hard stop"));
    return tell ? new Drives(Drive.HAND, Told.BY_CONTACTORS) : new Drives(Drive.MOTOR, Told.STATED);
  }
}
