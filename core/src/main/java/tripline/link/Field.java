package tripline.link;

import java.util.List;

/**
 * One field of a body, as the tables of SPEC §5 and §6 give it.
 *
 * @param name key in lines
 * @param shape size and way of writing
 * @param offset from the start of the body; for a string the place of the first string, which the
 *     lengths of earlier ones push back
 * @param least smallest value, for a string fewest bytes
 * @param most largest value, for a string most bytes
 * @param words names of values, may be empty
 */
record Field(String name, Shape shape, int offset, long least, long most, List<Coded> words) {
  /** Largest value of stamps and times: 2^53 - 1. */
  static final long MOST_STAMP = (1L << 53) - 1;

  enum Shape {
    U8(1),
    U8_HEX(1),
    U16(2),
    I32(4),
    U32(4),
    U32_HEX(4),
    U64(8),
    U64_HEX(8),
    STRING(1),
    ROWS(0),
    EDGES(0),
    DATA(0);

    final int size;

    Shape(int size) {
      this.size = size;
    }
  }

  static Field u8(String name, int offset, int least, int most) {
    return new Field(name, Shape.U8, offset, least, most, List.of());
  }

  static Field word(String name, int offset, Coded... values) {
    List<Coded> sent = List.of(values).stream().filter(v -> v.code() >= 0).toList();
    return new Field(name, Shape.U8, offset, 0, 255, sent);
  }

  static Field u16(String name, int offset, int least, int most) {
    return new Field(name, Shape.U16, offset, least, most, List.of());
  }

  static Field i32(String name, int offset) {
    return new Field(name, Shape.I32, offset, Integer.MIN_VALUE, Integer.MAX_VALUE, List.of());
  }

  static Field u32(String name, int offset, long least) {
    return new Field(name, Shape.U32, offset, least, 0xffff_ffffL, List.of());
  }

  static Field time(String name, int offset, long least) {
    return new Field(name, Shape.U64, offset, least, MOST_STAMP, List.of());
  }

  static Field hex(String name, Shape shape, int offset, long least, long most) {
    return new Field(name, shape, offset, least, most, List.of());
  }

  static Field string(String name, int offset, int least, int most) {
    return new Field(name, Shape.STRING, offset, least, most, List.of());
  }

  static Field tail(String name, Shape shape, int offset) {
    return new Field(name, shape, offset, 0, 0, List.of());
  }

  /** The value in a body that reaches far enough; not for strings and tails. */
  long value(byte[] body) {
    return switch (shape) {
      case U8, U8_HEX -> Le.u8(body, offset);
      case U16 -> Le.u16(body, offset);
      case I32 -> Le.i32(body, offset);
      case U32, U32_HEX -> Le.u32(body, offset);
      case U64, U64_HEX -> Le.i64(body, offset);
      case STRING, ROWS, EDGES, DATA -> throw new IllegalStateException(name);
    };
  }

  /** Writes a value. */
  void put(byte[] body, long value) {
    switch (shape) {
      case U8, U8_HEX -> Le.put8(body, offset, (int) value);
      case U16 -> Le.put16(body, offset, (int) value);
      case I32, U32, U32_HEX -> Le.put32(body, offset, value);
      case U64, U64_HEX -> Le.put64(body, offset, value);
      case STRING, ROWS, EDGES, DATA -> throw new IllegalStateException(name);
    }
  }

  /** Whether the field may hold the value; a 64-bit mask may hold any. */
  boolean allows(long value) {
    return shape == Shape.U64_HEX || (value >= least && value <= most);
  }
}
