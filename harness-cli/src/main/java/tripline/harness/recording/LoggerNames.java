package tripline.harness.recording;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import tripline.csv.CsvMetadata;
import tripline.link.Identity;

/** Loggers by the names they give themselves. */
public final class LoggerNames {
  /** Model that stands in a capture made from another format: no logger's. */
  public static final String CONVERTED = "converted";

  private LoggerNames() {}

  /** Model, serial number and firmware of every one, in order; empty where none spoke. */
  public static Optional<String> of(List<Identity> loggers) {
    return loggers.stream().allMatch(l -> l.model().equals(CONVERTED))
        ? Optional.empty()
        : Optional.of(
            loggers.stream().map(LoggerNames::of).distinct().collect(Collectors.joining("; ")));
  }

  /** What a line {@code # logger: ...} of a recording says. */
  public static Optional<String> of(CsvMetadata metadata) {
    return metadata.others().stream()
        .filter(item -> item.key().equalsIgnoreCase("logger") && !item.value().isBlank())
        .map(item -> item.value().strip())
        .findFirst();
  }

  private static String of(Identity logger) {
    String firmware = logger.firmware().isBlank() ? "" : ", firmware " + logger.firmware();
    return (logger.model() + " " + logger.serial()).strip() + firmware;
  }
}
