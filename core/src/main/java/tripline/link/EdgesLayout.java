package tripline.link;

import tripline.link.Field.Shape;

/** Where the fields of {@code edges} lie (SPEC §5, 05). */
final class EdgesLayout {
  static final int NUMBER = 4;
  static final int STAMP = 8;
  static final int FRACTION = 16;
  static final int COUNT = 18;
  static final int EDGES = 19;
  static final int MOST_EDGES = 96;

  /** Bytes of an edge: gap, then contact and level. */
  static final int EDGE_SIZE = 5;

  static final int EDGE_CONTACT = 4;
  static final int CONTACT_BITS = 0x3f;
  static final int ZERO_BIT = 0x40;
  static final int LEVEL_BIT = 0x80;

  static final Layout LAYOUT =
      Layout.of(
          Field.u32("number", NUMBER, 0),
          Field.time("stamp", STAMP, 0),
          Field.u16("fraction", FRACTION, 0, 999),
          Field.tail("list", Shape.EDGES, EDGES));

  private EdgesLayout() {}

  static boolean edgesFit(byte[] body, int length) {
    int count = Le.u8(body, COUNT);
    if (count < 1 || count > MOST_EDGES || EDGES + count * EDGE_SIZE != length) {
      return false;
    }
    for (int at = EDGES; at < length; at += EDGE_SIZE) {
      if ((body[at + EDGE_CONTACT] & ZERO_BIT) != 0) {
        return false;
      }
    }
    return true;
  }
}
