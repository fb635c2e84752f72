package tripline.link;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;

/** The decoder and encoder against protocol-spec/vectors, which a third codec wrote. */
class VectorTest {
  static List<Named<JsonNode>> valid() {
    return named("valid");
  }

  static List<Named<JsonNode>> invalid() {
    return named("invalid");
  }

  static List<Named<JsonNode>> stream() {
    return named("stream");
  }

  private static List<Named<JsonNode>> named(String kind) {
    return VectorFiles.cases(kind).stream()
        .map(c -> Named.of(c.get("name").asString(), c))
        .toList();
  }

  @Test
  void thereAreEnoughOfEachUnderDistinctNames() {
    assertThat(valid()).hasSizeGreaterThanOrEqualTo(40);
    assertThat(invalid()).hasSizeGreaterThanOrEqualTo(80);
    assertThat(stream()).hasSizeGreaterThanOrEqualTo(30);
    Set<String> names = new HashSet<>();
    for (String kind : List.of("valid", "invalid", "stream")) {
      VectorFiles.cases(kind)
          .forEach(c -> assertThat(names.add(kind + c.get("name").asString())).isTrue());
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"valid", "invalid", "stream"})
  void theFilesFollowTheirSchema(String kind) {
    assertThat(VectorFiles.objections(kind)).isEmpty();
  }

  @Test
  void everyMessageTypeHasAVector() {
    Set<String> seen = new HashSet<>();
    VectorFiles.cases("valid").forEach(c -> seen.add(c.get("message").get("message").asString()));
    assertThat(seen).hasSize(MessageType.values().length);
  }

  @ParameterizedTest
  @MethodSource("valid")
  void aValidMessageIsReadAndWrittenInBothEncodings(JsonNode vector) {
    byte[] frame = hex(vector.get("frame"));
    byte[] line = vector.get("line").asString().getBytes(UTF_8);
    List<byte[]> spellings = new ArrayList<>(List.of(frame, line));
    vector.path("also_frames").forEach(f -> spellings.add(hex(f.get("frame"))));
    vector.path("also_lines").forEach(l -> spellings.add(l.get("line").asString().getBytes(UTF_8)));
    for (byte[] spelling : spellings) {
      Received received = new Received().feed(spelling);
      assertThat(received.trees).hasSize(1);
      assertThat(VectorFiles.tree(received.trees.get(0))).isEqualTo(vector.get("message"));
      assertThat(received.decoder.counters().delivered()).isEqualTo(spelling.length);
      LinkMessage message = received.messages.get(0);
      int sequence = received.sequences.get(0);
      assertThat(encoded(message, sequence, Encoding.FRAMES)).isEqualTo(frame);
      assertThat(encoded(message, sequence, Encoding.LINES)).isEqualTo(line);
    }
  }

  @ParameterizedTest
  @MethodSource("invalid")
  void anInvalidUnitIsCountedAndTheNextIsRead(JsonNode vector) {
    boolean frames = vector.has("frame");
    Encoding encoding = frames ? Encoding.FRAMES : Encoding.LINES;
    byte[] unit = hex(vector.get(frames ? "frame" : "line_bytes"));
    Received received = new Received();
    byte[] before = encoded(new Query(), 0, encoding);
    byte[] after = encoded(new Stop(), 1, encoding);
    received.feed(before).feed(unit).feed(after);
    LinkCounters counters = received.decoder.counters();
    assertThat(received.messages).containsExactly(new Query(), new Stop());
    assertThat(counters.delivered()).isEqualTo(before.length + after.length);
    String verdict = vector.get("verdict").asString();
    assertThat(counters.damaged()).isEqualTo(verdict.equals("damaged") ? 1 : 0);
    assertThat(counters.malformed()).isEqualTo(verdict.equals("malformed") ? 1 : 0);
    assertThat(counters.unknown()).isEqualTo(verdict.equals("unknown") ? 1 : 0);
    assertThat(verdict.equals("damaged") ? counters.skipped() : counters.setAside())
        .isEqualTo(unit.length);
  }

  @ParameterizedTest
  @MethodSource("stream")
  void aStreamGivesItsMessagesAndCounters(JsonNode vector) {
    Received received = new Received();
    vector.get("chunks").forEach(chunk -> received.feed(hex(chunk)));
    if (vector.get("finish").asBoolean()) {
      received.decoder.finish();
    }
    assertThat(VectorFiles.tree(received.trees)).isEqualTo(vector.get("messages"));
    LinkCounters c = received.decoder.counters();
    JsonNode counters = vector.get("counters");
    assertThat(
            List.of(
                c.bytes(),
                c.delivered(),
                c.setAside(),
                c.skipped(),
                c.idle(),
                c.messages(),
                c.damaged(),
                c.malformed(),
                c.unknown(),
                c.repeated(),
                c.lost(),
                c.restarts(),
                c.pending()))
        .isEqualTo(
            List.of(
                of(counters, "bytes"),
                of(counters, "delivered"),
                of(counters, "set_aside"),
                of(counters, "skipped"),
                of(counters, "idle"),
                of(counters, "messages"),
                of(counters, "damaged"),
                of(counters, "malformed"),
                of(counters, "unknown"),
                of(counters, "repeated"),
                of(counters, "lost"),
                of(counters, "restarts"),
                of(counters, "pending")));
  }

  private static long of(JsonNode counters, String name) {
    return counters.get(name).asLong();
  }

  private static byte[] hex(JsonNode text) {
    return HexFormat.of().parseHex(text.asString());
  }

  static byte[] encoded(LinkMessage message, int sequence, Encoding encoding) {
    byte[] out = new byte[LinkEncoder.MOST_BYTES];
    return Arrays.copyOf(out, new LinkEncoder().encode(message, sequence, encoding, out, 0));
  }
}
