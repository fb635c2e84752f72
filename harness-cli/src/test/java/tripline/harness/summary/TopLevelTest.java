package tripline.harness.summary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Against Jackson, on objects from a seeded generator. */
class TopLevelTest {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  @Test
  void findsTheMembersThatJacksonFinds() throws Exception {
    for (int seed = 0; seed < 300; seed++) {
      Random random = new Random(seed);
      ObjectNode object = JsonNodeFactory.instance.objectNode();
      for (int i = random.nextInt(6); i > 0; i--) {
        object.set("k" + random.nextInt(1000), any(random, 4));
      }
      byte[] bytes =
          (random.nextBoolean()
                  ? object.toPrettyString()
                  : " " + MAPPER.writeValueAsString(object) + "\n")
              .getBytes(StandardCharsets.UTF_8);
      assertThat(MAPPER.valueToTree(members(bytes)).toString()).isEqualTo(object.toString());
      int end = bytes.length - (bytes[bytes.length - 1] == '\n' ? 1 : 0);
      for (int cut = 1; cut < end; cut++) {
        byte[] head = Arrays.copyOf(bytes, cut);
        assertThatThrownBy(() -> members(head)).isInstanceOf(UnusableResult.class);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"{\"a\" 1}", "{a: 1}", "{\"a\": }", "{\"a\": 1,}", "{} x", "", "{\"a\":1 2}"})
  void refusesWhatDoesNotFitTogether(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    assertThatThrownBy(() -> members(bytes)).isInstanceOf(UnusableResult.class);
  }

  @Test
  void whatIsNoObjectHasNoMembers() throws Exception {
    assertThat(members("[1, 2]".getBytes(StandardCharsets.UTF_8))).isEmpty();
  }

  private static Map<String, JsonNode> members(byte[] bytes) throws UnusableResult {
    Map<String, JsonNode> members = new LinkedHashMap<>();
    TopLevel.split(
        bytes,
        bytes.length,
        (key, from, to) -> {
          try {
            members.put(key, MAPPER.readTree(bytes, from, to - from));
          } catch (java.io.IOException e) {
            throw new UnusableResult(from);
          }
        });
    return members;
  }

  private static JsonNode any(Random random, int depth) {
    JsonNodeFactory json = JsonNodeFactory.instance;
    return switch (random.nextInt(depth > 0 ? 7 : 5)) {
      case 0 -> json.nullNode();
      case 1 -> json.booleanNode(random.nextBoolean());
      case 2 -> json.numberNode(random.nextInt(1000) - 500);
      case 3 -> json.numberNode(random.nextGaussian() * 1e-7);
      case 4 -> json.textNode("\"\\{}[],:é\u2028\n".substring(random.nextInt(10)));
      case 5 -> {
        var list = json.arrayNode();
        for (int i = random.nextInt(4); i > 0; i--) {
          list.add(any(random, depth - 1));
        }
        yield list;
      }
      default -> {
        ObjectNode object = json.objectNode();
        for (int i = random.nextInt(4); i > 0; i--) {
          object.set("n" + i, any(random, depth - 1));
        }
        yield object;
      }
    };
  }
}
