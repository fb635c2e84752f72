package tripline.link;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A body as the vectors write messages: keys as in SPEC §5, numbers, words and hexadecimal text.
 */
final class BodyTree {
  private BodyTree() {}

  static Map<String, Object> of(MessageType type, byte[] body) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("message", type.word());
    tree.put("sequence", BodySink.sequence(body));
    int string = type.layout().fixedLength();
    for (Field field : type.layout().fields()) {
      switch (field.shape()) {
        case STRING -> {
          int length = body[string];
          tree.put(field.name(), new String(body, string + 1, length, StandardCharsets.UTF_8));
          string += 1 + length;
        }
        case ROWS -> tree.put(field.name(), rows(new SampleBlock().read(body)));
        case EDGES -> tree.put(field.name(), edges(new EdgeBlock().read(body)));
        case DATA -> tree.put(field.name(), HexFormat.of().formatHex(Piece.read(body).data()));
        case U8_HEX, U32_HEX, U64_HEX ->
            tree.put(field.name(), Long.toHexString(field.value(body)));
        default -> tree.put(field.name(), wordOrNumber(field, field.value(body)));
      }
    }
    return tree;
  }

  private static Object wordOrNumber(Field field, long value) {
    for (Coded word : field.words()) {
      if (word.code() == value) {
        return word.word();
      }
    }
    return value;
  }

  private static List<Object> rows(SampleBlock block) {
    List<Object> rows = new ArrayList<>();
    for (int i = 0; i < block.rows(); i++) {
      List<Object> row = new ArrayList<>();
      row.add(block.hasReading(i) ? block.counts(i) : null);
      row.add(Long.toHexString(block.levels(i)));
      if (block.periodNs() == 0) {
        row.add(block.gapMicros(i));
      }
      rows.add(row);
    }
    return rows;
  }

  private static List<Object> edges(EdgeBlock block) {
    List<Object> edges = new ArrayList<>();
    for (int i = 0; i < block.edges(); i++) {
      edges.add(List.of(block.contact(i), block.level(i), block.gapNs(i)));
    }
    return edges;
  }
}
