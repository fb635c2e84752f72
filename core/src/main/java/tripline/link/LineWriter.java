package tripline.link;

import java.util.zip.CRC32C;

/** Writes a body as a canonical line (SPEC §7). */
final class LineWriter {
  /** Longest line with its LF. */
  static final int MOST_LINE = 6144;

  /** Bytes of the space, the tilde and the check that end a line. */
  static final int CHECK_LENGTH = 10;

  private final CRC32C crc = new CRC32C();
  private final SampleBlock samples = new SampleBlock();
  private final EdgeBlock edges = new EdgeBlock();

  /**
   * Writes the line with its LF.
   *
   * @param body a valid one
   * @return its length, at most {@value #MOST_LINE}
   */
  int write(MessageType type, byte[] body, byte[] out, int start) {
    int at = Ascii.put(out, start, type.word());
    out[at++] = ' ';
    at = Ascii.putDecimal(out, at, Le.u16(body, Layout.SEQUENCE));
    int string = type.layout().fixedLength();
    for (int i = 0; i < type.layout().fields().size(); i++) {
      Field field = type.layout().fields().get(i);
      out[at++] = ' ';
      at = Ascii.put(out, at, field.name());
      out[at++] = '=';
      if (field.shape() == Field.Shape.STRING) {
        int length = Le.u8(body, string);
        at = string(body, string + 1, length, out, at);
        string += 1 + length;
      } else {
        at = value(field, body, out, at);
      }
    }
    crc.reset();
    crc.update(out, start, at - start);
    out[at++] = ' ';
    out[at++] = '~';
    at = Ascii.putHex(out, at, crc.getValue(), 8);
    out[at++] = '\n';
    return at - start;
  }

  private int value(Field field, byte[] body, byte[] out, int at) {
    return switch (field.shape()) {
      case ROWS -> rows(body, out, at);
      case EDGES -> list(body, out, at);
      case DATA -> data(body, out, at);
      case U8_HEX, U32_HEX, U64_HEX -> Ascii.putHex(out, at, field.value(body), 1);
      default -> {
        long value = field.value(body);
        for (int i = 0; i < field.words().size(); i++) {
          if (field.words().get(i).code() == value) {
            yield Ascii.put(out, at, field.words().get(i).word());
          }
        }
        yield Ascii.putDecimal(out, at, value);
      }
    };
  }

  private static int string(byte[] body, int from, int length, byte[] out, int at) {
    int to = at;
    out[to++] = '"';
    for (int i = from; i < from + length; i++) {
      if (body[i] == '"' || body[i] == '\\') {
        out[to++] = '\\';
      }
      out[to++] = body[i];
    }
    out[to++] = '"';
    return to;
  }

  private static int data(byte[] body, byte[] out, int at) {
    int length = Le.u16(body, PieceLayout.LENGTH);
    int to = at;
    for (int i = 0; i < length; i++) {
      to = Ascii.putHex(out, to, Le.u8(body, PieceLayout.DATA + i), 2);
    }
    return to;
  }

  private int rows(byte[] body, byte[] out, int at) {
    samples.read(body);
    int to = at;
    for (int i = 0; i < samples.rows(); i++) {
      if (i > 0) {
        out[to++] = ',';
      }
      if (samples.hasReading(i)) {
        to = Ascii.putDecimal(out, to, samples.counts(i));
      } else {
        out[to++] = '-';
      }
      if (i == 0 || samples.levels(i) != samples.levels(i - 1)) {
        out[to++] = '/';
        to = Ascii.putHex(out, to, samples.levels(i), 1);
      }
      if (i > 0 && samples.periodNs() == 0) {
        out[to++] = '+';
        to = Ascii.putDecimal(out, to, samples.gapMicros(i));
      }
    }
    return to;
  }

  private int list(byte[] body, byte[] out, int at) {
    edges.read(body);
    int to = at;
    for (int i = 0; i < edges.edges(); i++) {
      if (i > 0) {
        out[to++] = ',';
      }
      to = Ascii.putDecimal(out, to, edges.contact(i));
      out[to++] = ':';
      to = Ascii.putDecimal(out, to, edges.level(i));
      if (edges.gapNs(i) != 0) {
        out[to++] = '+';
        to = Ascii.putDecimal(out, to, edges.gapNs(i));
      }
    }
    return to;
  }
}
