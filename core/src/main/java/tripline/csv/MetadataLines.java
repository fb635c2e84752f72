package tripline.csv;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tripline.sample.Drive;

/** Collects the {@code #} lines before the header. */
final class MetadataLines {
  /** More lines than any logger writes; bounds what a wrong file can make us hold. */
  static final int MOST_LINES = 1000;

  private final Row row;
  private final List<CsvMetadata.Item> others = new ArrayList<>();
  private int lines;
  private @Nullable Integer version;
  private @Nullable Drive drive;
  private @Nullable Instant started;
  private @Nullable PositionZero zero;

  MetadataLines(Row row) {
    this.row = row;
  }

  CsvMetadata metadata() {
    return new CsvMetadata(
        version == null ? CsvMetadata.VERSION : version,
        Optional.ofNullable(drive),
        Optional.ofNullable(started),
        Optional.ofNullable(zero),
        others);
  }

  /**
   * Takes the line that stands in the row.
   *
   * @throws Refused if it is not UTF-8, or a known key has a value that is none of its values or
   *     stands twice
   */
  void read() throws Refused {
    if (++lines > MOST_LINES) {
      throw row.refuse(
          row.from(), "more than " + MOST_LINES + " metadata lines", "expected a header by now");
    }
    @Nullable String text = Utf8.strict(row.bytes(), row.from() + 1, row.to());
    if (text == null || text.indexOf('\0') >= 0) {
      throw row.refuse(row.from(), "metadata line is not UTF-8", "expected text in UTF-8");
    }
    int colon = text.indexOf(':');
    String key = Utf8.plain(colon < 0 ? text : text.substring(0, colon));
    String value = colon < 0 ? "" : Utf8.plain(text.substring(colon + 1));
    switch (key.toLowerCase(Locale.ROOT)) {
      case CsvMetadata.KEY -> version = once(version, key, version(value));
      case "drive" -> drive = once(drive, key, drive(value));
      case "started" -> started = once(started, key, started(value));
      case "zero" -> zero = once(zero, key, zero(value));
      default -> others.add(new CsvMetadata.Item(key, value));
    }
  }

  private <T> T once(@Nullable T before, String key, T now) throws Refused {
    if (before != null) {
      throw row.refuse(row.from(), "metadata " + key + " stands twice", "expected it once");
    }
    return now;
  }

  private int version(String value) throws Refused {
    if (!value.equals(Integer.toString(CsvMetadata.VERSION))) {
      throw refuse("recording version", value, "expected " + CsvMetadata.VERSION);
    }
    return CsvMetadata.VERSION;
  }

  private Drive drive(String value) throws Refused {
    return switch (value) {
      case "hand" -> Drive.HAND;
      case "motor" -> Drive.MOTOR;
      default -> throw refuse("drive", value, "expected hand or motor");
    };
  }

  private PositionZero zero(String value) throws Refused {
    return switch (value) {
      case "kept" -> PositionZero.KEPT;
      case "lost" -> PositionZero.LOST;
      default -> throw refuse("zero", value, "expected kept or lost");
    };
  }

  private Instant started(String value) throws Refused {
    Optional<Instant> instant = Rfc3339.instant(value);
    if (instant.isEmpty()) {
      throw refuse("started", value, "expected an RFC 3339 stamp such as 2026-03-02T08:14:05Z");
    }
    return instant.get();
  }

  private Refused refuse(String key, String value, String expected) {
    int at = row.from();
    while (at < row.to() && row.bytes()[at] != ':') {
      at++;
    }
    at = Math.min(at + 1, row.to());
    while (at < row.to() && row.bytes()[at] == ' ') {
      at++;
    }
    return row.refuse(Math.min(at, row.to()), key + " " + Utf8.shown(value), expected);
  }
}
