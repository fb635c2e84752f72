package tripline.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import java.util.zip.CRC32C;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tripline.RequiredProgram;

/** A logger in another language, written from the specification alone, talks with this codec. */
@Timeout(value = 60, unit = TimeUnit.SECONDS, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class PlainLoggerTest {
  private final LinkEncoder encoder = new LinkEncoder();
  private final List<LinkMessage> seen = new ArrayList<>();
  private final LinkDecoder decoder =
      new LinkDecoder((type, body, length) -> seen.add(LinkMessage.read(type, body)));
  private Process process;
  private OutputStream to;
  private InputStream from;
  private int looked;

  @BeforeEach
  void start() throws IOException {
    RequiredProgram.need("python3");
    Path script =
        Path.of(System.getProperty("tripline.root"), "core/src/test/python/plain_logger.py");
    process =
        new ProcessBuilder("python3", script.toString(), "-")
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    to = process.getOutputStream();
    from = process.getInputStream();
  }

  @AfterEach
  void end() throws IOException, InterruptedException {
    if (process != null) {
      to.close();
      from.close();
      process.destroy();
      process.waitFor();
    }
  }

  private int send(LinkMessage message, Encoding encoding) throws IOException {
    int sequence = encoder.nextSequence();
    to.write(Streams.of(encoding, encoder, message));
    to.flush();
    return sequence;
  }

  /** Reads until a message not yet looked at satisfies the condition. */
  private LinkMessage await(Predicate<LinkMessage> condition) throws IOException {
    byte[] buffer = new byte[4096];
    while (true) {
      while (looked < seen.size()) {
        LinkMessage message = seen.get(looked++);
        if (condition.test(message)) {
          return message;
        }
      }
      int got = from.read(buffer);
      if (got < 0) {
        throw new IOException("the logger ended");
      }
      decoder.accept(buffer, 0, got);
    }
  }

  private Answer answerTo(int sequence) throws IOException {
    return (Answer) await(m -> m instanceof Answer a && a.to() == sequence);
  }

  private Answer hello(Encoding encoding) throws IOException {
    to.write(new byte[] {'\n', 0, 0});
    Talk talk = encoding == Encoding.LINES ? Talk.LINES : Talk.FRAMES;
    Answer answer = answerTo(send(new Hello(1, 0, talk.code()), Encoding.FRAMES));
    to.write(0);
    return answer;
  }

  @ParameterizedTest
  @EnumSource(Encoding.class)
  void describesItselfSamplesAndStops(Encoding encoding) throws IOException {
    assertThat(hello(encoding).result()).isEqualTo(Result.DONE);
    assertThat(decoder.encoding()).isEqualTo(encoding);
    assertThat(seen.stream().filter(m -> m instanceof ChannelDescription).count()).isEqualTo(2 * 5);
    Answer started = answerTo(send(new Start(1_000_000, 10), encoding));
    assertThat(started.value()).isEqualTo(1_000_000);
    await(m -> m instanceof EdgeBlock);
    Answer placed = answerTo(send(new Place(MarkKind.ADJUSTED.code(), "späť \"1\""), encoding));
    assertThat(placed.result()).isEqualTo(Result.DONE);
    assertThat(seen).anyMatch(m -> m instanceof MarkMessage k && k.text().equals("späť \"1\""));
    await(m -> m instanceof Status s && s.state() == LoggerState.RUNNING);
    assertThat(answerTo(send(new Start(0, 0), encoding)).result()).isEqualTo(Result.NOT_NOW);
    assertThat(answerTo(send(new Stop(), encoding)).result()).isEqualTo(Result.DONE);
    long next = 0;
    long known = 0;
    for (LinkMessage message : seen) {
      if (message instanceof SampleBlock block) {
        assertThat(block.number()).isEqualTo(next);
        next += block.rows();
        known = block.known();
      }
    }
    assertThat(next).isGreaterThan(200);
    assertThat(known).isEqualTo(15);
    LinkCounters counters = decoder.counters();
    assertThat(counters.damaged() + counters.malformed() + counters.unknown() + counters.repeated())
        .isZero();
    assertThat(counters.lost()).isZero();
  }

  @Test
  void obeysNoCommandTwice() throws IOException {
    hello(Encoding.FRAMES);
    byte[] out = new byte[LinkEncoder.MOST_BYTES];
    Place place = new Place(MarkKind.OPEN_STOP.code(), "");
    int length = encoder.encode(place, 77, Encoding.FRAMES, out, 0);
    List<Answer> answers = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      to.write(out, 0, length);
      to.flush();
      answers.add(answerTo(77));
    }
    assertThat(answers.get(2)).isEqualTo(answers.get(0));
    assertThat(seen.stream().filter(m -> m instanceof MarkMessage).count()).isEqualTo(1);
  }

  @Test
  void ignoresDamageAndRefusesWhatItDoesNotKnow() throws IOException {
    hello(Encoding.FRAMES);
    byte[] damaged = VectorTest.encoded(new Rate(5), 3, Encoding.FRAMES);
    damaged[1] ^= 1;
    to.write(damaged);
    to.write(HexFormat.of().parseHex(spoilt("5a000900")));
    to.flush();
    assertThat(answerTo(9).result()).isEqualTo(Result.NOT_KNOWN);
    to.write(HexFormat.of().parseHex(spoilt("44000a0000000000")));
    to.flush();
    assertThat(answerTo(10).result()).isEqualTo(Result.BAD_VALUE);
    send(new Query(), Encoding.FRAMES);
    Status status = (Status) await(m -> m instanceof Status);
    assertThat(status.badReceived()).isEqualTo(2);
  }

  /** A body under its right check, as a frame in hexadecimal. */
  private static String spoilt(String body) {
    byte[] bytes = HexFormat.of().parseHex(body + "00000000");
    CRC32C crc = new CRC32C();
    crc.update(bytes, 0, bytes.length - 4);
    Le.put32(bytes, bytes.length - 4, crc.getValue());
    byte[] out = new byte[Cobs.longest(bytes.length)];
    return HexFormat.of().formatHex(out, 0, Cobs.encode(bytes, bytes.length, out, 0)) + "00";
  }

  @Test
  void handsOverStoredRecordings() throws IOException {
    hello(Encoding.FRAMES);
    assertThat(answerTo(send(new ListStored(), Encoding.FRAMES)).value()).isEqualTo(2);
    await(m -> m instanceof Stored);
    Stored stored = (Stored) await(m -> m instanceof Stored s && s.index() == 1);
    Answer fetched = answerTo(send(new Fetch(stored.id(), 0, 0), Encoding.FRAMES));
    assertThat(fetched.value()).isEqualTo(stored.bytes());
    await(m -> m instanceof Status s && s.state() == LoggerState.IDLE);
    Received recording = new Received();
    CRC32C crc = new CRC32C();
    for (LinkMessage message : seen) {
      if (message instanceof Piece piece) {
        assertThat(piece.offset()).isEqualTo(recording.decoder.counters().bytes());
        crc.update(piece.data());
        recording.feed(piece.data());
      }
    }
    assertThat(crc.getValue()).isEqualTo(stored.check());
    assertThat(recording.decoder.counters().bytes()).isEqualTo(stored.bytes());
    assertThat(recording.decoder.counters().damaged()).isZero();
    long samples =
        recording.messages.stream()
            .filter(m -> m instanceof SampleBlock)
            .mapToLong(m -> ((SampleBlock) m).rows())
            .sum();
    assertThat(samples).isEqualTo(stored.samples());
  }
}
