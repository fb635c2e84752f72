package tripline.harness.recording;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import tripline.job.JobSheet;
import tripline.link.ChannelDescription;
import tripline.link.ChannelKind;
import tripline.reduce.ReductionSettings;

/**
 * What a reduction must know of a job and of the logger that describes itself: the sheet's word
 * counts, the logger's where the sheet has none, and input delays are the logger's (SPEC H7).
 */
public final class LoggerSettings {
  private LoggerSettings() {}

  /**
   * Settings for samples of this logger; the same live and from its capture.
   *
   * @param channels as the logger described them
   */
  public static ReductionSettings of(JobSheet sheet, List<ChannelDescription> channels) {
    @Nullable ChannelDescription position = null;
    for (ChannelDescription each : channels) {
      position = each.kind() == ChannelKind.POSITION ? each : position;
    }
    double unit =
        position == null ? 0 : Math.abs((double) position.numerator() / position.denominator());
    long positionDelayNs = position == null ? 0 : position.delayNs();
    List<Long> delays = new ArrayList<>();
    for (String name : sheet.channels().contacts()) {
      long delayNs = positionDelayNs;
      for (ChannelDescription each : channels) {
        delayNs =
            each.kind() == ChannelKind.CONTACT && each.name().equals(name)
                ? each.delayNs()
                : delayNs;
      }
      delays.add(delayNs - positionDelayNs);
    }
    double resolution = sheet.position().resolution();
    OptionalDouble modulus = sheet.position().modulus();
    return new ReductionSettings(
        sheet.channels(),
        sheet.settleNs(),
        sheet.position().skewNs(),
        resolution > 0 ? resolution : unit,
        modulus.isPresent() || position == null || position.modulus() == 0
            ? modulus
            : OptionalDouble.of(position.modulus() * unit),
        sheet.position().turnsPerUnit(),
        delays);
  }

  /**
   * What is wrong with a logger for this job, on one line: contacts of the chart that it does not
   * have. Torque and motor channels may be missing, for strokes by hand.
   */
  public static Optional<String> lacking(JobSheet sheet, List<ChannelDescription> channels) {
    Set<String> missing = new TreeSet<>();
    sheet.contacts().forEach(c -> missing.add(c.channel()));
    channels.stream()
        .filter(c -> c.kind() == ChannelKind.CONTACT)
        .forEach(c -> missing.remove(c.name()));
    return missing.isEmpty()
        ? Optional.empty()
        : Optional.of(
            "the logger has no channel %s, expected those of the job sheet; it has %s"
                .formatted(
                    String.join(", ", missing),
                    String.join(", ", channels.stream().map(ChannelDescription::name).toList())));
  }
}
