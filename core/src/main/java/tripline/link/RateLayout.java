package tripline.link;

/** Where the fields of {@code rate} lie (SPEC §6). */
final class RateLayout {
  static final int RATE = 4;
  static final int END = 8;

  static final Layout LAYOUT = Layout.of(Field.u32("rate", RATE, 1));

  private RateLayout() {}
}
