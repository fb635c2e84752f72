package tripline.link;

/** Where the fields of {@code status} lie (SPEC §5, 03). */
final class StatusLayout {
  static final int STATE = 4;
  static final int UTC_SOURCE = 5;
  static final int BACKLOG = 6;
  static final int STAMP = 8;
  static final int UTC = 16;
  static final int SESSION = 24;
  static final int RATE = 28;
  static final int SAMPLES = 32;
  static final int SAMPLES_LOST = 36;
  static final int EDGES_LOST = 40;
  static final int MESSAGES_DROPPED = 44;
  static final int BAD_RECEIVED = 48;
  static final int END = 52;

  static final Layout LAYOUT =
      Layout.of(
          Field.word("state", STATE, LoggerState.values()),
          Field.word("utc_source", UTC_SOURCE, UtcSource.values()),
          Field.u16("backlog", BACKLOG, 0, 1000),
          Field.time("stamp", STAMP, 0),
          Field.time("utc", UTC, 0),
          Field.u32("session", SESSION, 0),
          Field.u32("rate", RATE, 0),
          Field.u32("samples", SAMPLES, 0),
          Field.u32("samples_lost", SAMPLES_LOST, 0),
          Field.u32("edges_lost", EDGES_LOST, 0),
          Field.u32("messages_dropped", MESSAGES_DROPPED, 0),
          Field.u32("bad_received", BAD_RECEIVED, 0));

  private StatusLayout() {}
}
