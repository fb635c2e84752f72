package tripline.link;

import tripline.link.Field.Shape;

/** Where the fields of {@code stored} lie (SPEC §5, 09). */
final class StoredLayout {
  static final int INDEX = 4;
  static final int COUNT = 6;
  static final int ID = 8;
  static final int BYTES = 12;
  static final int CHECK = 16;
  static final int SAMPLES = 20;
  static final int STARTED = 24;
  static final int DURATION = 32;
  static final int LABEL = 40;
  static final int MOST_LABEL = 32;

  static final Layout LAYOUT =
      Layout.of(
          Field.u16("index", INDEX, 0, 0xffff),
          Field.u16("count", COUNT, 1, 0xffff),
          Field.u32("id", ID, 0),
          Field.u32("bytes", BYTES, 0),
          Field.hex("check", Shape.U32_HEX, CHECK, 0, 0xffff_ffffL),
          Field.u32("samples", SAMPLES, 0),
          Field.time("started", STARTED, 0),
          Field.time("duration", DURATION, 0),
          Field.string("label", LABEL, 0, MOST_LABEL));

  private StoredLayout() {}
}
