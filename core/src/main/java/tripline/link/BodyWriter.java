package tripline.link;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** Writes a body and refuses what it cannot carry. */
final class BodyWriter {
  private static final long MOST_U32 = 0xffff_ffffL;

  private final byte[] body;
  private final MessageType type;
  private int end = Layout.HEADER;

  private BodyWriter(byte[] body, MessageType type) {
    this.body = body;
    this.type = type;
  }

  /** Begins with a header of sequence 0 and zeros up to the strings. */
  static BodyWriter begin(byte[] body, MessageType type) {
    clear(body, type);
    return new BodyWriter(body, type);
  }

  /** Writes a header of sequence 0 and zeros up to the strings or rows. */
  static void clear(byte[] body, MessageType type) {
    Arrays.fill(body, 0, type.layout().fixedLength(), (byte) 0);
    body[Layout.TYPE] = (byte) type.code();
  }

  /**
   * @return the length
   * @throws IllegalArgumentException if a field is outside its range
   */
  static int checked(MessageType type, byte[] body, int length) {
    if (!type.layout().holds(body, length)) {
      throw new IllegalArgumentException(type.word() + ": a field is outside its range");
    }
    return length;
  }

  void put8(int at, int value) {
    Le.put8(body, at, inRange(value, 0xff));
  }

  void put16(int at, int value) {
    Le.put16(body, at, inRange(value, 0xffff));
  }

  void put32(int at, long value) {
    Le.put32(body, at, inRange(value));
  }

  void put32(int at, int value) {
    Le.put32(body, at, value);
  }

  void put64(int at, long value) {
    Le.put64(body, at, value);
  }

  void strings(int at) {
    end = at;
  }

  void string(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    if (end + 1 + bytes.length > Layout.MOST_BODY || bytes.length > 255) {
      throw new IllegalArgumentException(type.word() + ": a string of " + bytes.length + " bytes");
    }
    body[end++] = (byte) bytes.length;
    System.arraycopy(bytes, 0, body, end, bytes.length);
    end += bytes.length;
  }

  int data(byte[] data) {
    if (data.length < 1 || data.length > PieceLayout.MOST_DATA) {
      throw new IllegalArgumentException("piece: " + data.length + " bytes, expected 1 to 480");
    }
    Le.put16(body, PieceLayout.LENGTH, data.length);
    System.arraycopy(data, 0, body, PieceLayout.DATA, data.length);
    return PieceLayout.DATA + data.length;
  }

  int checked(int length) {
    end = length;
    return checked();
  }

  int checked() {
    return checked(type, body, end);
  }

  private int inRange(int value, int most) {
    if (value < 0 || value > most) {
      throw new IllegalArgumentException(type.word() + ": " + value + " is not in 0-" + most);
    }
    return value;
  }

  private long inRange(long value) {
    if (value < 0 || value > MOST_U32) {
      throw new IllegalArgumentException(type.word() + ": " + value + " is not in 0-" + MOST_U32);
    }
    return value;
  }
}
