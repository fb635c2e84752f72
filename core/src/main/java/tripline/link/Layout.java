package tripline.link;

import java.util.List;

/** The fields of one message type, in order, and what a body must satisfy (SPEC D7). */
final class Layout {
  /** Offset of the type in every body. */
  static final int TYPE = 0;

  /** Offset of the form: 0 but in {@code samples}. */
  static final int FORM = 1;

  /** Offset of the sequence. */
  static final int SEQUENCE = 2;

  /** Where the fields of a message begin, and the shortest body. */
  static final int HEADER = 4;

  /** Longest body. */
  static final int MOST_BODY = 512;

  /** Of messages that are a header only. */
  static final Layout EMPTY = of();

  private final List<Field> fields;
  private final int fixed;

  private Layout(List<Field> fields) {
    this.fields = fields;
    int end = HEADER;
    for (Field field : fields) {
      if (field.shape() == Field.Shape.STRING || field.shape().size == 0) {
        end = Math.max(end, field.offset());
        break;
      }
      end = Math.max(end, field.offset() + field.shape().size);
    }
    this.fixed = end;
  }

  static Layout of(Field... fields) {
    return new Layout(List.of(fields));
  }

  List<Field> fields() {
    return fields;
  }

  /** Bytes before the first string or tail. */
  int fixedLength() {
    return fixed;
  }

  /** Whether every field is there and within its range. */
  boolean holds(byte[] body, int length) {
    if (length < fixed) {
      return false;
    }
    int at = fixed;
    for (int i = 0; i < fields.size(); i++) {
      Field field = fields.get(i);
      switch (field.shape()) {
        case STRING -> {
          if (at >= length) {
            return false;
          }
          int bytes = Le.u8(body, at);
          if (bytes < field.least()
              || bytes > field.most()
              || at + 1 + bytes > length
              || !Utf8.plain(body, at + 1, at + 1 + bytes)) {
            return false;
          }
          at += 1 + bytes;
        }
        case ROWS -> {
          return SamplesLayout.rowsFit(body, length);
        }
        case EDGES -> {
          return EdgesLayout.edgesFit(body, length);
        }
        case DATA -> {
          return PieceLayout.dataFits(body, length);
        }
        default -> {
          if (!field.allows(field.value(body))) {
            return false;
          }
        }
      }
    }
    return body[TYPE] != MessageType.CHANNEL.code() || ChannelLayout.scaleFits(body);
  }
}
