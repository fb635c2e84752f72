package tripline.link;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tripline.RequiredProgram;

/**
 * The codec in C against the vectors, and against this one byte for byte over 100,000 random
 * messages; a million with {@code -Dtripline.require=all}. {@link LinkStudy} tries as many as one
 * likes.
 */
class SecondCodecTest {
  private static final int MESSAGES =
      System.getProperty("tripline.require", "").equals("all") ? 1_000_000 : 100_000;

  @TempDir static Path folder;
  private static SecondCodec codec;

  @BeforeAll
  static void compile() throws Exception {
    RequiredProgram.need("gcc");
    codec = new SecondCodec(SecondCodec.compile(folder));
  }

  @AfterAll
  static void end() throws IOException {
    if (codec != null) {
      codec.close();
    }
  }

  private static List<SecondCodec.Message> run(byte[] stream, int chunk) throws IOException {
    codec.send(stream, stream.length, chunk);
    List<SecondCodec.Message> all = new ArrayList<>();
    for (var message = codec.next(); message != null; message = codec.next()) {
      all.add(message);
    }
    return all;
  }

  @Test
  void everyValidVector() throws IOException {
    for (JsonNode vector : VectorFiles.cases("valid")) {
      byte[] frame = HexFormat.of().parseHex(vector.get("frame").asString());
      byte[] line = vector.get("line").asString().getBytes(UTF_8);
      List<byte[]> spellings = new ArrayList<>(List.of(frame, line));
      vector
          .path("also_frames")
          .forEach(f -> spellings.add(HexFormat.of().parseHex(f.get("frame").asString())));
      vector
          .path("also_lines")
          .forEach(l -> spellings.add(l.get("line").asString().getBytes(UTF_8)));
      for (byte[] spelling : spellings) {
        List<SecondCodec.Message> got = run(spelling, 7);
        assertThat(got).as(vector.get("name").asString()).hasSize(1);
        assertThat(VectorFiles.tree(tree(got.get(0)))).isEqualTo(vector.get("message"));
        assertThat(got.get(0).frame()).isEqualTo(frame);
        assertThat(got.get(0).line()).isEqualTo(line);
        assertThat(codec.counters().delivered()).isEqualTo(spelling.length);
      }
    }
  }

  @Test
  void everyInvalidVector() throws IOException {
    for (JsonNode vector : VectorFiles.cases("invalid")) {
      boolean frames = vector.has("frame");
      byte[] unit = HexFormat.of().parseHex(vector.get(frames ? "frame" : "line_bytes").asString());
      byte[] query = VectorTest.encoded(new Query(), 0, frames ? Encoding.FRAMES : Encoding.LINES);
      byte[] both = Arrays.copyOf(query, query.length + unit.length);
      System.arraycopy(unit, 0, both, query.length, unit.length);
      run(both, 64);
      LinkCounters counters = codec.counters();
      String verdict = vector.get("verdict").asString();
      assertThat(
              List.of(
                  counters.messages(),
                  counters.damaged(),
                  counters.malformed(),
                  counters.unknown()))
          .as(vector.get("name").asString())
          .isEqualTo(
              List.of(
                  1L,
                  verdict.equals("damaged") ? 1L : 0L,
                  verdict.equals("malformed") ? 1L : 0L,
                  verdict.equals("unknown") ? 1L : 0L));
    }
  }

  @Test
  void everyStreamVector() throws IOException {
    for (JsonNode vector : VectorFiles.cases("stream")) {
      byte[] stream = new byte[0];
      for (JsonNode chunk : vector.get("chunks")) {
        byte[] more = HexFormat.of().parseHex(chunk.asString());
        stream = Arrays.copyOf(stream, stream.length + more.length);
        System.arraycopy(more, 0, stream, stream.length - more.length, more.length);
      }
      List<Map<String, Object>> trees = new ArrayList<>();
      for (SecondCodec.Message message : run(stream, 3)) {
        if (message.handedOn()) {
          trees.add(tree(message));
        }
      }
      assertThat(VectorFiles.tree(trees))
          .as(vector.get("name").asString())
          .isEqualTo(vector.get("messages"));
      LinkCounters counters = codec.counters();
      JsonNode expected = vector.get("counters");
      long pending = vector.get("finish").asBoolean() ? 0 : expected.get("pending").asLong();
      assertThat(counters.delivered()).isEqualTo(expected.get("delivered").asLong());
      assertThat(counters.setAside()).isEqualTo(expected.get("set_aside").asLong());
      assertThat(counters.idle()).isEqualTo(expected.get("idle").asLong());
      assertThat(counters.skipped()).isEqualTo(expected.get("skipped").asLong() + pending);
      assertThat(counters.damaged())
          .isEqualTo(expected.get("damaged").asLong() + (pending > 0 ? 1 : 0));
      assertThat(counters.lost()).isEqualTo(expected.get("lost").asLong());
      assertThat(counters.restarts()).isEqualTo(expected.get("restarts").asLong());
      assertThat(counters.repeated()).isEqualTo(expected.get("repeated").asLong());
    }
  }

  @Test
  void randomMessagesByteForByte() throws Exception {
    assertThat(CodecAgreement.over(codec, Encoding.FRAMES, MESSAGES, 11)).isPositive();
    assertThat(CodecAgreement.over(codec, Encoding.LINES, MESSAGES / 4, 11)).isPositive();
  }

  @Test
  void noiseIsJudgedAndCountedAlike() throws IOException {
    for (int seed = 0; seed < 150; seed++) {
      byte[] stream = LinkLawsTest.noisyStream(seed);
      Verdicts verdicts = new Verdicts();
      verdicts.decoder.accept(stream, 0, stream.length);
      verdicts.decoder.finish();
      List<byte[]> bodies = new ArrayList<>();
      for (SecondCodec.Message message : run(stream, 1 + seed)) {
        bodies.add(message.body());
      }
      assertThat(codec.counters()).as("seed " + seed).isEqualTo(verdicts.decoder.counters());
      assertThat(bodies).usingElementComparator(Arrays::compare).isEqualTo(verdicts.bodies);
    }
  }

  @Test
  void spoiltBodiesAndLinesWithTheRightCheckAreJudgedAlike() throws IOException {
    RandomMessages messages = new RandomMessages(21);
    Random random = new Random(22);
    byte[] out = new byte[2 * LinkEncoder.MOST_BYTES];
    for (int round = 0; round < 40; round++) {
      byte[] stream = new byte[1 << 20];
      int length = 0;
      for (int i = 0; i < 200; i++) {
        Encoding encoding = round % 2 == 0 ? Encoding.FRAMES : Encoding.LINES;
        int written = new LinkEncoder().encode(messages.next(), i, encoding, out, 0);
        byte[] spoilt = Spoilt.anew(random, encoding, Arrays.copyOf(out, written));
        System.arraycopy(spoilt, 0, stream, length, spoilt.length);
        length += spoilt.length;
      }
      byte[] whole = Arrays.copyOf(stream, length);
      Verdicts verdicts = new Verdicts();
      verdicts.decoder.accept(whole, 0, length);
      verdicts.decoder.finish();
      List<byte[]> bodies = new ArrayList<>();
      run(whole, 4096).forEach(m -> bodies.add(m.body()));
      assertThat(codec.counters()).as("round " + round).isEqualTo(verdicts.decoder.counters());
      assertThat(bodies).usingElementComparator(Arrays::compare).isEqualTo(verdicts.bodies);
      assertThat(verdicts.decoder.counters().malformed()).isPositive();
    }
  }

  private static Map<String, Object> tree(SecondCodec.Message message) {
    MessageType type = MessageType.of(message.body()[0]);
    return BodyTree.of(type, message.body());
  }

  /** Bodies of everything whole, handed on or not. */
  private static final class Verdicts implements BodySink {
    private final List<byte[]> bodies = new ArrayList<>();
    private final LinkDecoder decoder = new LinkDecoder(this);

    @Override
    public void onBody(MessageType type, byte[] body, int length) {
      bodies.add(Arrays.copyOf(body, length));
    }

    @Override
    public void onSetAside(Cause cause, byte[] body, int length) {
      bodies.add(Arrays.copyOf(body, length));
    }
  }
}
