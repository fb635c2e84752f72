package tripline.harness.recording;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import tripline.capture.CaptureCounters;
import tripline.capture.CaptureDecoder;
import tripline.capture.CaptureSamples;
import tripline.job.JobSheet;
import tripline.link.ChannelDescription;
import tripline.link.ChannelKind;
import tripline.link.Identity;
import tripline.link.LinkCounters;
import tripline.link.SinkSource;

/** What a user should know of a capture without its being wrong: what is missing, and why. */
final class CaptureNotices {
  private static final int MOST_TOLD = 5;
  private static final double MICRO = 1e-6;

  private final List<String> notices = new ArrayList<>();

  private CaptureNotices() {}

  static List<String> of(
      CaptureSamples capture,
      CaptureDecoder decoder,
      List<Identity> loggers,
      List<SinkSource.Break> breaks,
      JobSheet sheet) {
    CaptureNotices all = new CaptureNotices();
    all.file(capture, decoder);
    all.gaps(capture);
    all.line(capture.counters());
    all.logger(capture, loggers, breaks);
    all.channels(capture.samples().channels(), sheet);
    return all.notices;
  }

  private void file(CaptureSamples capture, CaptureDecoder decoder) {
    CaptureCounters counters = decoder.counters();
    if (!decoder.ended()) {
      notices.add(
          "was cut off after %.1f s (no orderly end): what was received by then is used"
              .formatted(counters.lastMicros() * MICRO));
    }
    if (capture.begin().isEmpty()) {
      notices.add("the record of how the capture began is missing");
    }
    if (counters.damaged() > 0) {
      notices.add(
          "the file is damaged in %d places: %d bytes skipped"
              .formatted(counters.damaged(), counters.skipped()));
    }
    if (counters.missingRecords() > 0 || counters.missingBytes() > 0) {
      notices.add(
          "missing from the file: %d records, %d bytes of the logger among them"
              .formatted(counters.missingRecords(), counters.missingBytes()));
    }
    if (counters.unknown() > 0) {
      notices.add("%d records of a kind this version does not know".formatted(counters.unknown()));
    }
    if (capture.lateMarks() > 0) {
      notices.add(
          "%d marks pressed while the logger was out of reach are notes only"
              .formatted(capture.lateMarks()));
    }
  }

  private void gaps(CaptureSamples capture) {
    if (capture.gapCount() == 0) {
      return;
    }
    double wholeS = 0;
    List<String> told = new ArrayList<>();
    for (CaptureSamples.Gap gap : capture.gaps()) {
      wholeS += (gap.toMicros() - gap.fromMicros()) * MICRO;
      if (told.size() < MOST_TOLD) {
        told.add(
            String.format(
                Locale.ROOT,
                "%.1f-%.1f s %s",
                gap.fromMicros() * MICRO,
                gap.toMicros() * MICRO,
                gap.cause().name().toLowerCase(Locale.ROOT).replace('_', ' ')));
      }
    }
    String more = capture.gapCount() > told.size() ? ", ..." : "";
    notices.add(
        "the line was lost %d times, %.1f s in all: %s%s"
            .formatted(capture.gapCount(), wholeS, String.join(", ", told), more));
  }

  private void line(LinkCounters counters) {
    if (counters.damaged() + counters.malformed() + counters.lost() > 0) {
      notices.add(
          "on the line: %d messages lost, %d damaged units (%d bytes), %d malformed"
              .formatted(
                  counters.lost(), counters.damaged(), counters.skipped(), counters.malformed()));
    }
  }

  private void logger(
      CaptureSamples capture, List<Identity> loggers, List<SinkSource.Break> breaks) {
    if (capture.samples().unplacedRows() > 0) {
      notices.add(
          "%d samples came before the logger described itself"
              .formatted(capture.samples().unplacedRows()));
    }
    if (capture.samples().lateEvents() > 0) {
      notices.add(
          "%d edges or marks came after later samples, against the link's rules"
              .formatted(capture.samples().lateEvents()));
    }
    if (loggers.stream().map(i -> i.model() + '\n' + i.serial()).distinct().count() > 1) {
      notices.add(
          "more than one logger is in this capture: "
              + loggers.stream().map(i -> i.model() + " " + i.serial()).distinct().toList());
    }
    for (int i = 1; i < breaks.size() && i <= MOST_TOLD; i++) {
      notices.add(what(breaks.get(i)) + ": analysed on either side of it as two");
    }
  }

  private static String what(SinkSource.Break why) {
    return switch (why) {
      case NEW_SESSION -> "the logger was switched on again";
      case TIME_UNKNOWN ->
          "how long the line was lost is not known (the host slept, or its time was set), and the"
              + " logger's clock wraps";
      default -> "the logger's clock steps back";
    };
  }

  private void channels(List<ChannelDescription> channels, JobSheet sheet) {
    List<String> unasked = new ArrayList<>();
    Set<String> absent = CsvReading.optional(sheet);
    for (ChannelDescription each : channels) {
      if (each.kind() == ChannelKind.CONTACT) {
        absent.remove(each.name());
        if (sheet.channels().indexOf(each.name()) < 0) {
          unasked.add(each.name());
        }
      }
    }
    if (!unasked.isEmpty()) {
      notices.add("channels that nobody asks for: " + String.join(", ", unasked));
    }
    if (!absent.isEmpty()) {
      notices.add("no channel for " + String.join(", ", absent.stream().sorted().toList()));
    }
  }
}
