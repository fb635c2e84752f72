package tripline.link;

import tripline.link.Field.Shape;

/** Where the fields of {@code piece} lie (SPEC §5, 0A). */
final class PieceLayout {
  static final int ID = 4;
  static final int OFFSET = 8;
  static final int LENGTH = 12;
  static final int DATA = 14;
  static final int MOST_DATA = 480;

  static final Layout LAYOUT =
      Layout.of(
          Field.u32("id", ID, 0),
          Field.u32("offset", OFFSET, 0),
          Field.tail("data", Shape.DATA, DATA));

  private PieceLayout() {}

  static boolean dataFits(byte[] body, int length) {
    int bytes = Le.u16(body, LENGTH);
    return bytes >= 1 && bytes <= MOST_DATA && DATA + bytes <= length;
  }
}
