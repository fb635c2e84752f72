package tripline.harness.command;

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
import tripline.harness.capture.CaptureSummary;
import tripline.harness.capture.Capturing;
import tripline.harness.ending.EndRequest;
import tripline.harness.jobfile.JobFile;
import tripline.harness.serial.ByteLine;
import tripline.harness.serial.Reach;
import tripline.harness.serial.SerialPorts;
import tripline.sample.Drive;

/** Records a logger. */
@Command(
    name = "record",
    description = {
      "Record a logger on a serial port until Ctrl-C or q.",
      "Keys: c closed stop, o open stop, a adjusted, n note; the logger's own button does the same."
          + " Where standard input is no terminal they are taken as lines.",
      "A line that is lost is waited for, and the capture goes on in the same file."
    })
public final class RecordCommand implements Callable<ExitStatus> {
  @Spec private @Nullable CommandSpec spec;

  @Mixin private final PortArguments port = new PortArguments();

  @Parameters(index = "0", paramLabel = "JOB", description = "Job sheet (TOML).")
  private @Nullable Path job;

  @Parameters(
      index = "1",
      paramLabel = "OUT",
      description = "Capture to write, a new file; `check` takes it as it is.")
  private @Nullable Path out;

  @Option(
      names = "--drive",
      paramLabel = "HAND|MOTOR",
      description =
          "What moves the valve (default: what the sheet says of recordings; where it says nothing,"
              + " `check` goes by the motor channels, without them takes it for the hand if a stop"
              + " was marked, else for the motor).")
  private @Nullable Drive drive;

  @Option(
      names = "--zero",
      paramLabel = "KEPT|LOST",
      description =
          "Whether position zero is that of the recording before (default: kept as long as the"
              + " logger stays switched on).")
  private CaptureBegin.@Nullable Zero zero;

  @Mixin private final RateArgument samples = new RateArgument();

  @Option(names = "--no-keys", description = "Do not read the keyboard.")
  private boolean noKeys;

  @Override
  public ExitStatus call() {
    if (spec == null || job == null || out == null) {
      throw new IllegalStateException("called without its command line");
    }
    long rate = samples.milliHz(spec.commandLine());
    Reach reach = SerialPorts.to(port.name(), port.baud(spec.commandLine()));
    JobFile sheet = JobFile.read(job);
    CaptureStart.refuseExisting(out);
    EndRequest end = EndRequest.ofProcess();
    CaptureSummary summary;
    try (ByteLine line = reach.open();
        CaptureFile file = CaptureFile.create(out, heading(sheet), System::nanoTime);
        RecordPanel panel = new RecordPanel(sheet.sheet(), noKeys, spec.commandLine().getErr())) {
      end.atOnce(panel::giveBack);
      Capturing capturing =
          new Capturing(
              file,
              reach,
              sheet.sheet().channels(),
              rate,
              panel,
              System::nanoTime,
              InstantSource.system());
      CaptureStart.begin(capturing, line, sheet, file);
      panel.begun(capturing.incoming(), out);
      summary = capturing.run(end);
    }
    spec.commandLine().getOut().println(RecordPanel.summary(summary, out));
    return ExitStatus.ACCEPTED;
  }

  private CaptureBegin heading(JobFile sheet) {
    return CaptureStart.heading(
        sheet,
        Optional.ofNullable(drive).or(() -> sheet.layout().drive()),
        Optional.ofNullable(zero),
        port.name());
  }
}
