package tripline.link;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/** Little-endian numbers in a byte array. */
final class Le {
  private static final VarHandle SHORT = view(short[].class);
  private static final VarHandle INT = view(int[].class);
  private static final VarHandle LONG = view(long[].class);

  private Le() {}

  private static VarHandle view(Class<?> array) {
    return MethodHandles.byteArrayViewVarHandle(array, ByteOrder.LITTLE_ENDIAN);
  }

  static int u8(byte[] from, int at) {
    return from[at] & 0xff;
  }

  static int u16(byte[] from, int at) {
    return (short) SHORT.get(from, at) & 0xffff;
  }

  static int i16(byte[] from, int at) {
    return (short) SHORT.get(from, at);
  }

  static int i32(byte[] from, int at) {
    return (int) INT.get(from, at);
  }

  static long u32(byte[] from, int at) {
    return (int) INT.get(from, at) & 0xffff_ffffL;
  }

  static long i64(byte[] from, int at) {
    return (long) LONG.get(from, at);
  }

  static void put8(byte[] into, int at, int value) {
    into[at] = (byte) value;
  }

  static void put16(byte[] into, int at, int value) {
    SHORT.set(into, at, (short) value);
  }

  static void put32(byte[] into, int at, long value) {
    INT.set(into, at, (int) value);
  }

  static void put64(byte[] into, int at, long value) {
    LONG.set(into, at, value);
  }
}
