package tripline.matrix;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import tripline.cases.Case;
import tripline.cases.Recording;
import tripline.develop.Development;
import tripline.develop.Explanation;
import tripline.job.JobSheet;
import tripline.reduce.Reduction;
import tripline.reduce.ReductionSettings;
import tripline.reduce.Trace;
import tripline.result.Result;
import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.sample.SampleSink;
import tripline.travel.RecordingTrace;
import tripline.verdict.Verdict;

/** From recordings of the model to a result, without files. */
final class Answer {
  private Answer() {}

  static Result of(JobSheet sheet, List<Recording> recordings) {
    return of(sheet, recordings, sink -> sink);
  }

  /** What the command of a case answers. */
  static Result of(Case it) {
    Development development = develop(it.sheet(), it.recordings(), sink -> sink);
    return it.command() == Case.Command.ACCEPT
        ? Verdict.accepting(development)
        : Verdict.of(development);
  }

  static Result of(Specimen specimen) {
    return of(specimen.sheet(), specimen.recordings(), specimen.spoilt());
  }

  private static Result of(
      JobSheet sheet, List<Recording> recordings, UnaryOperator<SampleSink> spoilt) {
    return Verdict.of(develop(sheet, recordings, spoilt));
  }

  static Development develop(
      JobSheet sheet, List<Recording> recordings, UnaryOperator<SampleSink> spoilt) {
    return develop(sheet, recordings, spoilt, List.of());
  }

  /** With input filters of these delays, ns, by channel of the sheet. */
  static Development develop(
      JobSheet sheet,
      List<Recording> recordings,
      UnaryOperator<SampleSink> spoilt,
      List<Long> delaysNs) {
    return Explanation.of(traces(sheet, recordings, spoilt, delaysNs), sheet, Optional.empty());
  }

  /** The recordings, reduced. */
  static List<RecordingTrace> traces(
      JobSheet sheet, List<Recording> recordings, UnaryOperator<SampleSink> spoilt) {
    return traces(sheet, recordings, spoilt, List.of());
  }

  private static List<RecordingTrace> traces(
      JobSheet sheet,
      List<Recording> recordings,
      UnaryOperator<SampleSink> spoilt,
      List<Long> delaysNs) {
    List<RecordingTrace> traces = new ArrayList<>();
    for (Recording recording : recordings) {
      Stretches stretches = new Stretches(() -> new Reduction(settings(sheet, delaysNs)));
      List<String> columns = recording.actuator().plan().channels();
      recording.play(new Rewired(spoilt.apply(stretches), sheet, columns));
      boolean kept = recording.zero().equals("kept");
      for (Trace trace : stretches.finish()) {
        traces.add(
            new RecordingTrace(
                recording.file(),
                "",
                recording.drive(),
                kept ? RecordingTrace.Zero.KEPT : RecordingTrace.Zero.LOST,
                trace));
        kept = true;
      }
    }
    return traces;
  }

  private static ReductionSettings settings(JobSheet sheet, List<Long> delaysNs) {
    double modulus = sheet.position().modulus().orElse(0);
    return new ReductionSettings(
        sheet.channels(),
        sheet.settleNs(),
        sheet.position().skewNs(),
        sheet.position().resolution(),
        modulus > 0 ? OptionalDouble.of(modulus) : OptionalDouble.empty(),
        sheet.position().turnsPerUnit(),
        delaysNs);
  }

  /** Sorts the actuator's channels into the order of the sheet's, by name. */
  private static final class Rewired implements SampleSink {
    private final SampleSink next;
    private final int[] to;

    Rewired(SampleSink next, JobSheet sheet, List<String> columns) {
      this.next = next;
      to = columns.stream().mapToInt(sheet.channels()::indexOf).toArray();
    }

    private long sorted(long mask) {
      long out = 0;
      for (int i = 0; i < to.length; i++) {
        out |= to[i] >= 0 && (mask >> i & 1) != 0 ? 1L << to[i] : 0;
      }
      return out;
    }

    @Override
    public void onRow(long timeNs, double reading, long known, long closed) {
      next.onRow(timeNs, reading, sorted(known), sorted(closed));
    }

    @Override
    public void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {
      if (to[channel] >= 0) {
        next.onEdge(timeNs, resolutionNs, to[channel], state);
      }
    }

    @Override
    public void onMark(long timeNs, Mark mark, String text) {
      next.onMark(timeNs, mark, text);
    }

    @Override
    public void onLoss(long fromNs, long toNs, long samples) {
      next.onLoss(fromNs, toNs, samples);
    }
  }
}
