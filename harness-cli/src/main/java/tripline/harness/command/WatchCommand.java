package tripline.harness.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tripline.capture.CaptureBegin;
import tripline.harness.capture.CaptureFile;
import tripline.harness.capture.Capturing;
import tripline.harness.ending.EndRequest;
import tripline.harness.failure.LinkFailure;
import tripline.harness.jobfile.JobFile;
import tripline.harness.recording.LiveCapture;
import tripline.harness.report.CheckText;
import tripline.harness.report.TextStyle;
import tripline.harness.resultfile.ReferenceFile;
import tripline.harness.serial.ByteLine;
import tripline.harness.serial.Reach;
import tripline.harness.serial.SerialPorts;
import tripline.harness.watch.Station;
import tripline.harness.watch.Watching;
import tripline.live.LiveAnswer;
import tripline.sample.Drive;
import tripline.travel.Reference;

/** The live view. */
@Command(
    name = "watch",
    description = {
      "Live: where the valve is, what each contact does, how far each target is, and step by step"
          + " how an end is set and proved. Ends with the answer `check` would give.",
      "Keys: c closed stop, o open stop, a adjusted, n note, q end; the logger's own button does the"
          + " same.",
      "Where standard output is no terminal each event is a line; where standard input is none, keys"
          + " are taken as lines."
    })
public final class WatchCommand implements Callable<ExitStatus> {
  @Spec private @Nullable CommandSpec spec;

  @Mixin private final PortArguments port = new PortArguments();

  @Parameters(index = "0", paramLabel = "JOB", description = "Job sheet (TOML).")
  private @Nullable Path job;

  @Option(
      names = "--capture",
      paramLabel = "OUT",
      description = "Keep all that comes, in a new file; `check` takes it as it is.")
  private @Nullable Path out;

  @Option(
      names = "--reference",
      paramLabel = "RESULT",
      description = "Take hard stops that are not touched from an earlier result.")
  private @Nullable Path earlier;

  @Option(
      names = "--drive",
      paramLabel = "HAND|MOTOR",
      description =
          "What moves the valve (default: what the sheet says of recordings, else the hand).")
  private @Nullable Drive drive;

  @Mixin private final RateArgument rate = new RateArgument();

  @Option(names = "--no-keys", description = "Do not read the keyboard.")
  private boolean noKeys;

  @Override
  public ExitStatus call() {
    if (spec == null || job == null) {
      throw new IllegalStateException("called without its command line");
    }
    long rateMilliHz = rate.milliHz(spec.commandLine());
    Reach reach = SerialPorts.to(port.name(), port.baud(spec.commandLine()));
    JobFile sheet = JobFile.read(job);
    Optional<Reference> reference =
        earlier == null
            ? Optional.empty()
            : Optional.of(ReferenceFile.read(earlier, sheet.sheet()).reference());
    if (out != null) {
      CaptureStart.refuseExisting(out);
    }
    PrintWriter answers = spec.commandLine().getOut();
    PrintWriter errors = spec.commandLine().getErr();
    sheet.assumptions().forEach(note -> Analysis.assumed(sheet.file(), note, errors));
    LiveCapture live = new LiveCapture(out == null ? port.name() : out.toString(), sheet);
    Optional<LiveAnswer> answer =
        watch(sheet, reference, live, reach, rateMilliHz, answers, errors);
    live.notices().forEach(notice -> Notices.say(port.name() + ": " + notice, errors));
    if (answer.isEmpty()) {
      throw new LinkFailure(port.name(), "not one sample came, expected a logger that samples");
    }
    CheckText.write(answer.get().result(), sheet.sheet(), TextStyle.ofProcess(), answers);
    return Analysis.status(answer.get().result().decision());
  }

  private Optional<LiveAnswer> watch(
      JobFile sheet,
      Optional<Reference> reference,
      LiveCapture live,
      Reach reach,
      long rateMilliHz,
      PrintWriter answers,
      PrintWriter errors) {
    EndRequest asked = EndRequest.ofProcess();
    Station.Keys keys = noKeys ? Station.Keys.LEFT_ALONE : Station.Keys.READ;
    try (ByteLine line = reach.open()) {
      Station station = Station.ofProcess(keys, TextStyle.ofProcess(), answers, errors);
      Optional<String> kept = Optional.ofNullable(out).map(Path::toString);
      try (Watching watching =
              new Watching(sheet.sheet(), reference, live, port.name(), kept, station);
          CaptureFile file = file(sheet, watching)) {
        asked.atOnce(watching::giveBack);
        Capturing capturing =
            new Capturing(
                file,
                reach,
                sheet.sheet().channels(),
                rateMilliHz,
                watching.panel(),
                System::nanoTime,
                InstantSource.system());
        CaptureStart.begin(capturing, line, sheet, file);
        capturing.run(watching.until(asked));
        return watching.end();
      }
    }
  }

  private CaptureFile file(JobFile sheet, Watching watching) {
    CaptureBegin begin =
        CaptureStart.heading(
            sheet,
            Optional.ofNullable(drive)
                .or(() -> sheet.layout().drive())
                .or(() -> Optional.of(Drive.HAND)),
            Optional.empty(),
            port.name());
    return out == null
        ? CaptureFile.unkept(begin, System::nanoTime, watching::onBytes)
        : CaptureFile.create(out, begin, System::nanoTime, watching::onBytes);
  }
}
