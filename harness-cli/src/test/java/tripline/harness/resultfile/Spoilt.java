package tripline.harness.resultfile;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/** A result file with each of its values in turn replaced by what does not belong there. */
public final class Spoilt {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String TOKEN = "\"spoilt-here\"";

  /** Of every kind, too large, too small, not whole, hostile. */
  private static final List<String> VALUES =
      List.of(
          "null",
          "true",
          "-1",
          "1e308",
          "1e999",
          "99999999999999999999",
          "\"\\u202e\\u001b[31m<b>\\nx\"",
          "[]",
          "{}",
          "[[{}]]",
          "NaN");

  private Spoilt() {}

  /** All of them; lists of more than two elements are spoilt in the first two. */
  public static List<String> of(String result) throws JsonProcessingException {
    JsonNode root = JSON.readTree(result);
    List<String> all = new ArrayList<>();
    walk(
        root,
        marked -> {
          String text = root.toString();
          for (String value : VALUES) {
            all.add(text.replace(TOKEN, value));
          }
          all.add(text.replaceAll("\"[^\"]*\":" + TOKEN + ",?", "").replace(",}", "}"));
        });
    return all;
  }

  private static void walk(JsonNode node, Consumer<JsonNode> at) {
    if (node instanceof ObjectNode object) {
      List<String> names = new ArrayList<>();
      object.fieldNames().forEachRemaining(names::add);
      for (String name : names) {
        JsonNode value = object.get(name);
        object.put(name, "spoilt-here");
        at.accept(object);
        object.set(name, value);
        walk(value, at);
      }
    } else if (node instanceof ArrayNode array) {
      for (int i = 0; i < Math.min(2, array.size()); i++) {
        JsonNode value = array.get(i);
        array.set(i, JSON.getNodeFactory().textNode("spoilt-here"));
        at.accept(array);
        array.set(i, value);
        walk(value, at);
      }
    }
  }
}
