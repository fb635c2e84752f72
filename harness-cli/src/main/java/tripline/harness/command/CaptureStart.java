package tripline.harness.command;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import tripline.Version;
import tripline.capture.CaptureBegin;
import tripline.capture.CaptureFormat;
import tripline.harness.capture.CaptureFile;
import tripline.harness.capture.Capturing;
import tripline.harness.failure.InputFailure;
import tripline.harness.failure.LinkFailure;
import tripline.harness.failure.OutputFailure;
import tripline.harness.jobfile.JobFile;
import tripline.harness.recording.LoggerSettings;
import tripline.harness.serial.ByteLine;
import tripline.sample.Drive;

/** How the commands that capture begin. */
final class CaptureStart {
  private CaptureStart() {}

  /**
   * Sees to it that nothing is written over.
   *
   * @throws OutputFailure if there is such a file
   */
  static void refuseExisting(Path out) {
    if (Files.exists(out)) {
      throw new OutputFailure(out.toString(), "is there already, expected the name of a new file");
    }
  }

  /** What a capture begun now says of itself. */
  static CaptureBegin heading(
      JobFile sheet, Optional<Drive> drive, Optional<CaptureBegin.Zero> zero, String port) {
    return new CaptureBegin(
        CaptureFormat.MAJOR,
        CaptureFormat.MINOR,
        drive,
        zero,
        ChronoUnit.MICROS.between(Instant.EPOCH, Instant.now()),
        sheet.sha256(),
        "tripline " + Version.TEXT,
        port,
        sheet.sheet().job().tag(),
        sheet.file());
  }

  /** Begins; a capture of nobody, or of a logger the sheet does not fit, is not kept. */
  static void begin(Capturing capturing, ByteLine line, JobFile sheet, CaptureFile file) {
    try {
      capturing.begin(line);
      LoggerSettings.lacking(sheet.sheet(), capturing.incoming().channels())
          .ifPresent(
              lacking -> {
                throw new InputFailure(sheet.file(), lacking);
              });
    } catch (LinkFailure | InputFailure e) {
      capturing.abandon();
      file.discard();
      throw e;
    }
  }
}
