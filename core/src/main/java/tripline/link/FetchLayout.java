package tripline.link;

/** Where the fields of {@code fetch} lie (SPEC §6). */
final class FetchLayout {
  static final int ID = 4;
  static final int OFFSET = 8;
  static final int LENGTH = 12;
  static final int END = 16;

  static final Layout LAYOUT =
      Layout.of(
          Field.u32("id", ID, 0), Field.u32("offset", OFFSET, 0), Field.u32("length", LENGTH, 0));

  private FetchLayout() {}
}
