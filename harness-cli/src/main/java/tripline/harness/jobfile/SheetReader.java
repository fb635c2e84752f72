package tripline.harness.jobfile;

import java.util.List;
import java.util.Optional;
import org.tomlj.TomlTable;
import tripline.csv.CsvLayout;
import tripline.job.Cam;
import tripline.job.Contact;
import tripline.job.End;
import tripline.job.JobSheet;
import tripline.job.SheetSense;

/** Reads the sections of one sheet into one {@link JobSheet}. */
final class SheetReader {
  /** In the order messages list them. */
  private static final List<String> KEYS =
      List.of(
          "job",
          "travel",
          "position",
          "logger",
          "ends",
          "cam",
          "contact",
          "acceptance",
          "torque",
          "motor",
          "recording");

  private final Section top;
  private final Notes notes;

  SheetReader(TomlTable toml, Notes notes) {
    this.top = new Section(toml, "", notes);
    this.notes = notes;
    KEYS.forEach(top::raw);
  }

  /**
   * The sheet, as far as it could be read: what could not be is noted, and something harmless
   * stands in its place.
   */
  JobSheet sheet() {
    top.require("job", "[job] with a tag");
    top.require("cam", "at least one [[cam]]");
    top.require("contact", "at least one [[contact]]");
    Section logger = top.section("logger", "a table, [logger]");
    Section ends = top.section("ends", "the tables [ends.closed] and [ends.open]");
    List<Cam> cams = CamSection.all(top.sections("cam", "tables, [[cam]]"), notes);
    List<Contact> contacts =
        ContactSection.all(top.sections("contact", "tables, [[contact]]"), notes);
    Section torque = top.section("torque", "a table, [torque]");
    Section motor = top.section("motor", "a table, [motor]");
    JobSheet sheet =
        new JobSheet(
            JobSection.identity(top.section("job", "a table, [job]"), notes),
            JobSection.travel(top.section("travel", "a table, [travel]")),
            LoggerSection.position(top.section("position", "a table, [position]"), notes),
            LoggerSection.settleNs(logger),
            EndSection.read(ends, End.CLOSED, contacts, notes),
            EndSection.read(ends, End.OPEN, contacts, notes),
            cams,
            contacts,
            JobSection.acceptance(top.section("acceptance", "a table, [acceptance]")),
            channel(torque, "closing"),
            channel(torque, "opening"),
            channel(motor, "closing"),
            channel(motor, "opening"));
    ends.close();
    torque.close();
    motor.close();
    return sheet;
  }

  /** The layout of the recordings; closes the sheet and adds what it says as a whole. */
  CsvLayout layout(JobSheet sheet) {
    Section recording = top.section("recording", "a table, [recording]");
    CsvLayout layout = RecordingSection.read(recording, notes);
    top.close();
    SheetSense.of(sheet).forEach(notes::remark);
    RecordingSection.columns(sheet, layout, notes);
    return layout;
  }

  private static Optional<String> channel(Section section, String direction) {
    Section one = section.section(direction, "a table such as { channel = \"t1\" }");
    if (!one.isPresent()) {
      return Optional.empty();
    }
    one.require("channel", "the name of a channel");
    Optional<String> channel = one.text("channel", TextRule.NAME);
    one.close();
    return channel;
  }
}
