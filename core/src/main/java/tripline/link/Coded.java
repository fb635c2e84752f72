package tripline.link;

import java.util.Locale;

/** A value of a word field: a number in frames, a word in lines. */
interface Coded {
  /** The number on the wire. */
  int code();

  /** The name of the constant. */
  String name();

  /** The word on the line. */
  default String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The constant of a code, or {@code others} for a code that has none. */
  static <E extends Enum<E> & Coded> E of(E[] values, int code, E others) {
    for (E value : values) {
      if (value.code() == code) {
        return value;
      }
    }
    return others;
  }
}
