package tripline.link;

/** Where the fields of {@code time} lie (SPEC §6). */
final class TimeLayout {
  static final int UTC = 4;
  static final int END = 12;

  static final Layout LAYOUT = Layout.of(Field.time("utc", UTC, 1));

  private TimeLayout() {}
}
