package tripline.harness.rehearse;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import tripline.harness.failure.InputFailure;
import tripline.harness.rehearse.logger.LoggerMake;
import tripline.harness.rehearse.valve.SensorBuild;
import tripline.harness.rehearse.valve.ValveBuild;
import tripline.job.Contact;
import tripline.job.JobSheet;
import tripline.link.Ability;
import tripline.link.ChannelDescription;
import tripline.link.Encoding;
import tripline.link.Identity;
import tripline.link.Reports;

/** The logger that is wired to a valve: a channel for everything the sheet reads. */
final class RigLogger {
  private static final int CLOCK_BITS = 32;
  private static final int BOTH_ENCODINGS = 3;
  private static final int LINES_ONLY = 2;
  private static final int BODY_LIMIT = 512;
  private static final int SMALL_BODY_LIMIT = 64;
  private static final long LEAST_RATE = 1_000;
  private static final long MOST_RATE = 5_000_000;
  private static final long EDGE_RESOLUTION_NS = 1_000;
  private static final int MOST_NAME_BYTES = 32;

  private RigLogger() {}

  static LoggerMake make(ValveBuild build, Kit kit, Encoding talks, long session) {
    boolean full = kit == Kit.FULL;
    List<ChannelDescription> channels = channels(build, full ? Reports.BOTH : Reports.SAMPLED);
    Identity identity =
        new Identity(
            1,
            0,
            CLOCK_BITS,
            channels.size() - 1,
            1,
            full ? BOTH_ENCODINGS : LINES_ONLY,
            full ? BODY_LIMIT : SMALL_BODY_LIMIT,
            full ? LoggerMake.everything() : Ability.START_STOP.bit(),
            session,
            LEAST_RATE,
            MOST_RATE,
            full ? "Rehearsal logger" : "Small rehearsal logger",
            "R-0001",
            "1.0");
    return new LoggerMake(identity, channels, full ? talks : Encoding.LINES);
  }

  /**
   * Contacts pull their inputs low when closed, torque contacts and contactors high; limit contacts
   * may be stamped by hardware too. Delays are 0: those of a sheet ({@code position.skew_s}) are in
   * the readings already.
   */
  private static List<ChannelDescription> channels(ValveBuild build, Reports limits) {
    List<ChannelDescription> channels = new ArrayList<>();
    SensorBuild sensor = build.sensor();
    String unit = Math.abs(sensor.turnsPerUnit()) == 1 ? "turn" : "unit";
    channels.add(
        ChannelDescription.position(
            "position", unit, sensor.numerator(), sensor.denominator(), sensor.modulusCounts(), 0));
    List<String> names = build.sheet().channels().contacts();
    for (int i = 0; i < names.size(); i++) {
      channels.add(contact(i, names.get(i), build.sheet(), limits));
    }
    return channels;
  }

  private static ChannelDescription contact(
      int number, String name, JobSheet sheet, Reports limits) {
    if (name.getBytes(StandardCharsets.UTF_8).length > MOST_NAME_BYTES) {
      throw new InputFailure(
          "channel " + name,
          "the name is too long for the link, expected at most " + MOST_NAME_BYTES + " bytes");
    }
    boolean position = sheet.contacts().stream().anyMatch(c -> c.channel().equals(name));
    boolean limit =
        sheet.contacts().stream()
            .filter(c -> c.channel().equals(name))
            .map(Contact::role)
            .anyMatch(role -> role.limitOf().isPresent());
    return ChannelDescription.contact(
        number,
        name,
        position ? 0 : 1,
        limit ? limits : Reports.SAMPLED,
        0,
        limit && limits == Reports.BOTH ? EDGE_RESOLUTION_NS : 0);
  }
}
