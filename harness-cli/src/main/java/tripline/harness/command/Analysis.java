package tripline.harness.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import tripline.StrokeAnalysis;
import tripline.harness.failure.OutputFailure;
import tripline.harness.jobfile.JobFile;
import tripline.harness.jobfile.SheetNote;
import tripline.harness.recording.Order;
import tripline.harness.recording.RecordingFile;
import tripline.harness.recording.Recordings;
import tripline.harness.report.AnswerFile;
import tripline.harness.report.CheckText;
import tripline.harness.report.Provenance;
import tripline.harness.report.ResultJson;
import tripline.harness.report.TextStyle;
import tripline.harness.report.record.RecordFile;
import tripline.harness.resultfile.ReferenceFile;
import tripline.job.JobSheet;
import tripline.measure.Decision;
import tripline.result.Result;
import tripline.travel.RecordingTrace;
import tripline.travel.Reference;

/**
 * Job sheet and recordings turned into a result.
 *
 * @param job the sheet
 * @param result what was found
 * @param provenance where it comes from
 */
record Analysis(JobFile job, Result result, Provenance provenance) {
  /** More threads than this wait for each other. */
  private static final int MOST_THREADS = 64;

  /** From reduced recordings to a result. */
  private interface Explaining {
    Result of(JobSheet sheet, List<RecordingTrace> recordings, Optional<Reference> reference);
  }

  /** Reads and analyses what the arguments name; notices go to the command's standard error. */
  static Analysis of(AnalysisArguments arguments, CommandLine line) {
    return of(arguments, line, StrokeAnalysis::of);
  }

  /** The same, with what the strokes say together. */
  static Analysis accepting(AnalysisArguments arguments, CommandLine line) {
    return of(arguments, line, StrokeAnalysis::accepting);
  }

  private static Analysis of(AnalysisArguments arguments, CommandLine line, Explaining explaining) {
    if (arguments.threads() < 1 || arguments.threads() > MOST_THREADS) {
      throw new ParameterException(
          line, "--threads is %d, expected 1 to %d".formatted(arguments.threads(), MOST_THREADS));
    }
    for (Path report : arguments.reports()) {
      if (!RecordFile.canBe(report)) {
        throw new ParameterException(
            line, "--report is %s, expected a name in .html or .pdf".formatted(report));
      }
    }
    OwnInputs.spare(line, arguments.inputs(), arguments.outputs());
    JobFile job = JobFile.read(arguments.job());
    @Nullable Path earlier = arguments.reference();
    Optional<ReferenceFile> reference =
        earlier == null ? Optional.empty() : Optional.of(ReferenceFile.read(earlier, job.sheet()));
    List<RecordingFile> files =
        Recordings.read(arguments.recordings(), job, arguments.threads(), arguments.wantsDigests());
    job.assumptions().forEach(note -> assumed(job.file(), note, line.getErr()));
    files.forEach(file -> notices(file, line.getErr()));
    Order.notices(files).forEach(notice -> Notices.say(notice, line.getErr()));
    List<RecordingTrace> traces = files.stream().flatMap(f -> f.traces().stream()).toList();
    Provenance provenance =
        new Provenance(
            job.file(),
            job.sha256(),
            files.stream().flatMap(f -> f.traces().stream().map(t -> made(f))).toList(),
            reference.map(ReferenceFile::source));
    Result result = explaining.of(job.sheet(), traces, reference.map(ReferenceFile::reference));
    return new Analysis(job, result, provenance);
  }

  private static Provenance.Made made(RecordingFile file) {
    return new Provenance.Made(file.started(), file.logger());
  }

  /** A verdict must not rest on a target that nobody stated without saying so. */
  static void assumed(String file, SheetNote note, PrintWriter errors) {
    errors.println("%s:%d:%d: %s".formatted(file, note.line(), note.column(), note.message()));
  }

  private static void notices(RecordingFile file, PrintWriter errors) {
    file.notices().forEach(notice -> Notices.say(file.name() + ": " + notice, errors));
  }

  /** Gives the answer in every form that is wanted, and says what the process says of it. */
  ExitStatus answer(AnalysisArguments arguments, PrintWriter out) {
    if (arguments.wantsText()) {
      CheckText.write(result, job.sheet(), TextStyle.ofProcess(), out);
    }
    writeJson(arguments, out);
    writeReports(arguments);
    return status(result.decision());
  }

  /** Writes the result file where it is wanted. */
  private void writeJson(AnalysisArguments arguments, PrintWriter out) {
    @Nullable Path json = arguments.json();
    if (arguments.wantsJsonOnOutput()) {
      try {
        ResultJson.write(result, provenance, out);
      } catch (IOException e) {
        throw OutputFailure.of("standard output", e);
      }
    } else if (json != null) {
      AnswerFile.write(json, writer -> ResultJson.write(result, provenance, writer));
    }
  }

  /** Writes every record that is wanted. */
  private void writeReports(AnalysisArguments arguments) {
    for (Path report : arguments.reports()) {
      RecordFile.write(report, result, job.sheet(), provenance);
    }
  }

  /** What the process says of a decision. */
  static ExitStatus status(Decision decision) {
    return switch (decision) {
      case ACCEPT -> ExitStatus.ACCEPTED;
      case REJECT -> ExitStatus.REJECTED;
      case UNDECIDED -> ExitStatus.UNDECIDED;
    };
  }
}
