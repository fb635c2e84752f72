package tripline.harness.recording;

import java.util.List;
import java.util.Optional;
import tripline.job.End;
import tripline.job.JobSheet;
import tripline.reduce.Trace;
import tripline.sample.Drive;

/** What moved the valve, where a recording does not say so. */
final class Drives {
  private Drives() {}

  /**
   * What was stated; else the motor, with a notice unless it was seen to run: a hand stroke taken
   * for one of the motor loses its hard stops, the other way round a stop would be invented.
   *
   * @param how words that state it
   */
  static Drive of(
      Optional<Drive> stated,
      String how,
      List<Trace> traces,
      JobSheet sheet,
      List<String> notices) {
    if (stated.isEmpty() && !motorRan(traces, sheet)) {
      notices.add(
          "what drove the valve is not stated (%s), taken as motor: where it stood still is no hard stop"
              .formatted(how));
    }
    return stated.orElse(Drive.MOTOR);
  }

  private static boolean motorRan(List<Trace> traces, JobSheet sheet) {
    long motors = 0;
    for (End end : End.values()) {
      motors |= sheet.motor(end).map(c -> 1L << sheet.channels().indexOf(c)).orElse(0L);
    }
    long channels = motors;
    return traces.stream()
        .anyMatch(
            t ->
                ((t.start().closed() | t.end().closed()) & channels) != 0
                    || t.changes().stream().anyMatch(c -> (1L << c.channel() & channels) != 0));
  }
}
