package tripline.finding;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import tripline.assess.Amounts;
import tripline.assess.Assessment;
import tripline.reduce.Loss;
import tripline.reduce.ReadingFault;
import tripline.reduce.Trace;

/**
 * {@code samples-lost}, {@code position-gap}, {@code position-frozen}, {@code position-slip},
 * {@code time-repeated}: what is wrong with a recording itself; one finding a code and recording.
 */
final class RecordingFaults implements Look {
  /** Slips and frozen readings are findings of their own: they touch what may be decided. */
  private static final Map<ReadingFault.Kind, Code> CODES =
      Map.of(
          ReadingFault.Kind.REPEATED_STAMP, Code.TIME_REPEATED,
          ReadingFault.Kind.EVENTS_LEFT_OUT, Code.SAMPLES_LOST);

  @Override
  public void look(Assessment assessment, FindingSink sink) {
    for (int i = 0; i < assessment.development().recordings().size(); i++) {
      Trace trace = assessment.development().recordings().get(i).trace();
      for (Loss.What what : Loss.What.values()) {
        List<Loss> losses = trace.losses().stream().filter(l -> l.what() == what).toList();
        if (!losses.isEmpty()) {
          sink.onFinding(loss(i, trace, what, losses));
        }
      }
      for (ReadingFault fault : trace.faults()) {
        Code code = CODES.get(fault.kind());
        if (code != null) {
          sink.onFinding(fault(i, trace, code, fault));
        }
      }
    }
  }

  private static double seconds(Trace trace, long timeNs) {
    return (timeNs - trace.firstNs()) * 1e-9;
  }

  private static Finding loss(int recording, Trace trace, Loss.What what, List<Loss> losses) {
    Loss first = losses.get(0);
    double whole = losses.stream().mapToDouble(l -> (l.toNs() - l.fromNs()) * 1e-9).sum();
    long samples =
        losses.stream().mapToLong(Loss::samples).allMatch(n -> n >= 0)
            ? losses.stream().mapToLong(Loss::samples).sum()
            : -1;
    boolean rows = what == Loss.What.ROWS;
    Draft draft =
        Draft.of(rows ? Code.SAMPLES_LOST : Code.POSITION_GAP)
            .at(recording, seconds(trace, first.fromNs()))
            .evidence("stretches", losses.size())
            .evidence("length_s", whole);
    if (samples >= 0) {
      draft.evidence("samples", samples);
    }
    return draft.says(
        String.format(
            "%s are missing from recording %d in %d %s, %s in all, first at %s.",
            rows ? (samples > 0 ? samples + " samples" : "Samples") : "Position readings",
            recording + 1,
            losses.size(),
            losses.size() == 1 ? "stretch" : "stretches",
            Amounts.seconds(whole),
            Amounts.seconds(seconds(trace, first.fromNs()))),
        rows
            ? "Changes in there cannot be placed: check logger, cable and card, and repeat the"
                + " stroke."
            : "Check the position sensor's lead; changes in there cannot be placed.");
  }

  private static Finding fault(int recording, Trace trace, Code code, ReadingFault fault) {
    double from = seconds(trace, fault.fromNs());
    Draft draft = Draft.of(code).at(recording, from).evidence("times", fault.amount());
    if (code == Code.TIME_REPEATED) {
      return draft.says(
          String.format(
              "Time stamps of recording %d are repeated, first at %s.",
              recording + 1, Amounts.seconds(from)),
          "Check the logger's clock and its export.");
    }
    return draft.says(
        String.format(
            Locale.ROOT,
            "%.0f contact events after the first thousands were left out, %s.",
            fault.amount(),
            Text.when(recording, from)),
        "Look for a contact that chatters or a loose wire, and record again.");
  }
}
