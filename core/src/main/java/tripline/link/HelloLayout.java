package tripline.link;

/** Where the fields of {@code hello} lie (SPEC §6). */
final class HelloLayout {
  static final int MAJOR = 4;
  static final int MINOR = 5;
  static final int ENCODING = 6;
  static final int END = 7;

  static final Layout LAYOUT =
      Layout.of(
          Field.u8("major", MAJOR, 1, 255),
          Field.u8("minor", MINOR, 0, 255),
          Field.word("encoding", ENCODING, Talk.values()));

  private HelloLayout() {}
}
