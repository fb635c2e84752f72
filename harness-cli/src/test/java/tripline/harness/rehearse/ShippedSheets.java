package tripline.harness.rehearse;

import java.nio.file.Path;
import tripline.harness.jobfile.JobFile;
import tripline.job.JobSheet;

/** Job sheets of the recording cases. */
public final class ShippedSheets {
  private ShippedSheets() {}

  /** The sheet a rehearsal is built after where none is named: short travel, motor, torque. */
  public static JobSheet motor() {
    return of("motor-right");
  }

  /** The sheet of a case. */
  public static JobSheet of(String name) {
    return JobFile.read(
            Path.of(System.getProperty("tripline.root"), "recordings", name, "job.toml"))
        .sheet();
  }
}
