package tripline.link;

import org.jspecify.annotations.Nullable;

/** Turns the content of a whole line into the canonical body of the same message (SPEC §7). */
final class LineReader {
  enum Outcome {
    READ,
    UNKNOWN,
    MALFORMED,
    WITHOUT_SEQUENCE
  }

  private final LineCursor cursor = new LineCursor();
  private final SampleBlock samples = new SampleBlock();
  private final EdgeBlock edges = new EdgeBlock();
  private int length;

  /** Length of the body last read; the header alone if it was not {@link Outcome#READ}. */
  int length() {
    return length;
  }

  /** Reads {@code [from, to)}, the line up to the space before its check. */
  Outcome read(byte[] line, int from, int to, byte[] body) {
    int nameEnd = from;
    while (nameEnd < to && line[nameEnd] != ' ') {
      nameEnd++;
    }
    cursor.begin(line, nameEnd, to);
    long sequence = cursor.pass(' ') ? cursor.decimal() : LineCursor.UNREADABLE;
    length = Layout.HEADER;
    if (sequence < 0 || sequence > 0xffff || !cursor.atEndOfToken()) {
      return Outcome.WITHOUT_SEQUENCE;
    }
    MessageType type = MessageType.of(line, from, nameEnd);
    if (type == null) {
      header(body, null, sequence);
      return Outcome.UNKNOWN;
    }
    int end = fields(type, body);
    header(body, type, sequence);
    if (end < 0) {
      return Outcome.MALFORMED;
    }
    length = end;
    return Outcome.READ;
  }

  private static void header(byte[] body, @Nullable MessageType type, long sequence) {
    if (type != MessageType.SAMPLES) {
      body[Layout.FORM] = 0;
    }
    body[Layout.TYPE] = type == null ? 0 : (byte) type.code();
    Le.put16(body, Layout.SEQUENCE, (int) sequence);
  }

  /** Length of the body, or -1. */
  private int fields(MessageType type, byte[] body) {
    BodyWriter.clear(body, type);
    int end = type.layout().fixedLength();
    for (int i = 0; i < type.layout().fields().size(); i++) {
      Field field = type.layout().fields().get(i);
      if (!cursor.passKey(field.name())) {
        return -1;
      }
      end = value(field, body, end);
      if (end < 0 || !cursor.atEndOfToken()) {
        return -1;
      }
    }
    return type.layout().holds(body, end) ? end : -1;
  }

  private int value(Field field, byte[] body, int end) {
    return switch (field.shape()) {
      case STRING -> {
        int bytes = cursor.string(body, end + 1, (int) field.most());
        body[end] = (byte) bytes;
        yield bytes < 0 ? -1 : end + 1 + bytes;
      }
      case ROWS -> rows(body);
      case EDGES -> list(body);
      case DATA -> {
        int data = cursor.data(body, PieceLayout.DATA, PieceLayout.MOST_DATA);
        Le.put16(body, PieceLayout.LENGTH, data);
        yield data < 0 ? -1 : end + data;
      }
      case U8_HEX, U32_HEX, U64_HEX -> {
        int digits = cursor.hexDigits();
        yield digits == 0 ? -1 : put(field, body, cursor.hex(digits), end);
      }
      case I32 -> put(field, body, cursor.signed(), end);
      default -> {
        long value = field.words().isEmpty() ? cursor.decimal() : cursor.word(field);
        yield put(field, body, value, end);
      }
    };
  }

  private static int put(Field field, byte[] body, long value, int end) {
    if (!field.allows(value)) {
      return -1;
    }
    field.put(body, value);
    return end;
  }

  private int rows(byte[] body) {
    long period = Le.u32(body, SamplesLayout.PERIOD);
    samples.begin(
        Le.u32(body, SamplesLayout.NUMBER),
        Le.i64(body, SamplesLayout.STAMP),
        period,
        Le.i64(body, SamplesLayout.KNOWN));
    long levels = 0;
    do {
      boolean reading = !cursor.pass('-');
      long count = 0;
      if (reading) {
        count = cursor.decimal();
      } else if (cursor.peek() >= '0' && cursor.peek() <= '9') {
        reading = true;
        count = -cursor.decimal();
      }
      if (count != (int) count) {
        return -1;
      }
      if (cursor.pass('/')) {
        int digits = cursor.hexDigits();
        if (digits == 0) {
          return -1;
        }
        levels = cursor.hex(digits);
      }
      long gap = period == 0 && cursor.pass('+') ? cursor.decimal() : 0;
      boolean gapFits = gap >= 0 && gap <= (samples.rows() == 0 ? 0 : 0xffff_ffffL);
      if (!gapFits
          || !(reading
              ? samples.add((int) count, levels, gap)
              : samples.addWithoutReading(levels, gap))) {
        return -1;
      }
    } while (cursor.pass(','));
    return samples.writeBody(body);
  }

  private int list(byte[] body) {
    edges.begin(
        Le.u32(body, EdgesLayout.NUMBER),
        Le.i64(body, EdgesLayout.STAMP),
        Le.u16(body, EdgesLayout.FRACTION));
    do {
      long contact = cursor.decimal();
      long level = cursor.pass(':') ? cursor.decimal() : LineCursor.UNREADABLE;
      long gap = cursor.pass('+') ? cursor.decimal() : 0;
      boolean inRange =
          contact >= 0 && contact <= EdgesLayout.CONTACT_BITS && level >= 0 && level <= 1;
      if (!inRange || !edges.add(gap, (int) contact, (int) level)) {
        return -1;
      }
    } while (cursor.pass(','));
    return edges.writeBody(body);
  }
}
