package tripline.link;

import tripline.link.Field.Shape;

/** Where the fields of {@code identity} lie (SPEC §5, 01). */
final class IdentityLayout {
  static final int MAJOR = 4;
  static final int MINOR = 5;
  static final int CLOCK_BITS = 6;
  static final int CONTACTS = 7;
  static final int POSITIONS = 8;
  static final int ENCODINGS = 9;
  static final int BODY_LIMIT = 10;
  static final int ABILITIES = 12;
  static final int SESSION = 16;
  static final int RATE_MIN = 20;
  static final int RATE_MAX = 24;
  static final int STRINGS = 28;
  static final int MOST_STRING = 32;

  static final Layout LAYOUT =
      Layout.of(
          Field.u8("major", MAJOR, 1, 255),
          Field.u8("minor", MINOR, 0, 255),
          Field.u8("clock_bits", CLOCK_BITS, 32, 53),
          Field.u8("contacts", CONTACTS, 0, 64),
          Field.u8("positions", POSITIONS, 0, 1),
          Field.hex("encodings", Shape.U8_HEX, ENCODINGS, 1, 3),
          Field.u16("body_limit", BODY_LIMIT, 64, 512),
          Field.hex("abilities", Shape.U32_HEX, ABILITIES, 0, 0xffff_ffffL),
          Field.u32("session", SESSION, 0),
          Field.u32("rate_min", RATE_MIN, 0),
          Field.u32("rate_max", RATE_MAX, 0),
          Field.string("model", STRINGS, 0, MOST_STRING),
          Field.string("serial", STRINGS, 0, MOST_STRING),
          Field.string("firmware", STRINGS, 0, MOST_STRING));

  private IdentityLayout() {}
}
