package tripline.harness.host;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import tripline.harness.serial.LineGone;
import tripline.link.Answer;
import tripline.link.Encoding;
import tripline.link.MessageType;
import tripline.link.Place;
import tripline.link.Result;
import tripline.link.Start;

/** The host's duties H1 to H4 and the time-outs of SPEC §6, by a fake clock. */
class LoggerLineTest {
  private final FakeLogger logger = new FakeLogger();
  private final List<MessageType> bodies = new ArrayList<>();
  private final List<String> order = new ArrayList<>();
  private final Incoming incoming =
      new Incoming(
          (bytes, length) -> order.add("bytes"),
          (type, body, length) -> {
            order.add("body");
            bodies.add(type);
          });
  private final LoggerLine line = new LoggerLine(logger, incoming, logger);

  private Greeting.Partner greet() throws LineGone, NoAnswer {
    return Greeting.over(line);
  }

  @Test
  void opensWithLineFeedTwoZerosAndHelloAsAFrame() throws Exception {
    assertThat(greet()).isEqualTo(Greeting.Partner.ANSWERS);
    assertThat(Arrays.copyOf(logger.received.toByteArray(), 3)).containsExactly('\n', 0, 0);
    assertThat(logger.heard).containsExactly("hello 0 FRAMES");
    assertThat(incoming.described()).isTrue();
    assertThat(incoming.identity()).isEqualTo(logger.identity());
    assertThat(incoming.channels()).extracting(c -> c.name()).containsExactly("p", "k1");
  }

  @Test
  void keepsBytesBeforeTheyAreDecoded() throws Exception {
    greet();
    assertThat(order.get(0)).isEqualTo("bytes");
    assertThat(order).contains("body");
  }

  @Test
  void saysHelloAsALineAfterTheTimeOutWithTheSameSequence() throws Exception {
    logger.talks = Encoding.LINES;
    logger.encodings = 2;
    logger.habits.add(
        (type, command, sequence) -> logger.heard.get(logger.heard.size() - 1).endsWith("FRAMES"));
    greet();
    assertThat(logger.heard).containsExactly("hello 0 FRAMES", "hello 0 LINES");
    assertThat(logger.nowNs).isBetween(500_000_000L, 800_000_000L);
    line.ask(new Start(0, 0));
    assertThat(logger.heard).last().isEqualTo("start 1 LINES");
  }

  @Test
  void asksALoggerThatTalksLinesForFramesIfItHasThem() throws Exception {
    logger.talks = Encoding.LINES;
    greet();
    assertThat(logger.heard).containsExactly("hello 0 FRAMES", "hello 1 LINES");
    assertThat(logger.talks).isEqualTo(Encoding.FRAMES);
    line.ask(new Start(0, 0));
    assertThat(logger.heard).last().isEqualTo("start 2 FRAMES");
    assertThat(incoming.counters().damaged()).isZero();
  }

  @Test
  void repeatsACommandWithItsOldSequenceTwiceAtMost() throws Exception {
    greet();
    logger.habits.add(
        (type, command, sequence) -> type == MessageType.PLACE && logger.heard.size() < 4);
    Answer answer = line.ask(new Place(1, ""));
    assertThat(answer.to()).isEqualTo(1);
    assertThat(logger.heard)
        .containsExactly("hello 0 FRAMES", "place 1 FRAMES", "place 1 FRAMES", "place 1 FRAMES");
    logger.heard.clear();
    logger.habits.add((type, command, sequence) -> type == MessageType.START);
    long beforeNs = logger.nowNs;
    assertThatThrownBy(() -> line.ask(new Start(0, 0)))
        .isInstanceOf(NoAnswer.class)
        .hasMessage("the logger does not answer the command start");
    assertThat(logger.heard).containsExactly("start 2 FRAMES", "start 2 FRAMES", "start 2 FRAMES");
    assertThat(logger.nowNs - beforeNs).isBetween(1_500_000_000L, 2_100_000_000L);
  }

  @Test
  void aRepeatedAnswerToAnEarlierCommandIsNotTakenForThisOne() throws Exception {
    greet();
    logger.habits.add(
        (type, command, sequence) -> {
          logger.say(new Answer(type.code(), Result.FAILED.code(), sequence - 1, 9));
          return false;
        });
    assertThat(line.ask(new Start(0, 0)).result()).isEqualTo(Result.DONE);
  }

  @Test
  void aBusyLoggerIsAskedAgainWithANewSequence() throws Exception {
    greet();
    logger.habits.add(
        (type, command, sequence) -> {
          if (sequence < 4) {
            logger.say(new Answer(type.code(), Result.BUSY.code(), sequence, 0));
          }
          return sequence < 4;
        });
    assertThat(line.ask(new Start(0, 0)).result()).isEqualTo(Result.DONE);
    assertThat(logger.heard)
        .containsExactly(
            "hello 0 FRAMES",
            "start 1 FRAMES",
            "start 2 FRAMES",
            "start 3 FRAMES",
            "start 4 FRAMES");
  }

  @Test
  void aPortWhereNobodySpeaksIsSaidToBeSo() {
    logger.habits.add((type, command, sequence) -> true);
    assertThatThrownBy(this::greet)
        .isInstanceOf(NoAnswer.class)
        .hasMessage("no logger answers on this port, not a byte came");
    assertThat(logger.heard).hasSize(6);
  }

  @Test
  void noiseIsNoLogger() {
    logger.habits.add(
        (type, command, sequence) -> {
          logger.raw((byte) 1, (byte) 2, (byte) 3);
          return true;
        });
    assertThatThrownBy(this::greet)
        .isInstanceOf(NoAnswer.class)
        .hasMessageStartingWith("no logger answers on this port: of the 18 bytes");
  }

  @Test
  void aLoggerThatCannotReceiveIsHeardOut() throws Exception {
    logger.habits.add(
        (type, command, sequence) -> {
          logger.status(1);
          if (logger.heard.size() == 6) {
            logger.describe();
          }
          return true;
        });
    assertThat(greet()).isEqualTo(Greeting.Partner.TALKS_ONLY);
    assertThat(incoming.described()).isTrue();
  }

  @Test
  void aLoggerThatNeverDescribesItselfIsRefused() {
    logger.habits.add(
        (type, command, sequence) -> {
          logger.status(1);
          return true;
        });
    assertThatThrownBy(this::greet)
        .isInstanceOf(NoAnswer.class)
        .hasMessageContaining("does not describe itself within 11 s");
  }

  @Test
  void aDescriptionDamagedOnTheWayIsAskedForAgain() throws Exception {
    logger.habits.add(
        (type, command, sequence) -> {
          if (sequence > 0) {
            return false;
          }
          logger.say(logger.identity());
          logger.say(new Answer(type.code(), Result.DONE.code(), sequence, 0));
          return true;
        });
    greet();
    assertThat(logger.heard).containsExactly("hello 0 FRAMES", "hello 1 FRAMES");
    assertThat(incoming.described()).isTrue();
  }

  @Test
  void anotherMajorVersionIsNotDecoded() {
    logger.major = 2;
    assertThatThrownBy(this::greet)
        .isInstanceOf(NoAnswer.class)
        .hasMessage("the logger speaks version 2.0 of the link, this program version 1.0");
  }

  @Test
  void aRunningLoggerSilentForThreeSecondsHasFailed() throws Exception {
    greet();
    logger.status(1);
    line.pump();
    assertThat(line.failed()).isFalse();
    line.pumpFor(2_900_000_000L);
    assertThat(line.failed()).isFalse();
    line.pumpFor(300_000_000L);
    assertThat(line.failed()).isTrue();
    logger.status(1);
    line.pump();
    assertThat(line.failed()).isFalse();
    logger.status(0);
    line.pumpFor(4_000_000_000L);
    assertThat(line.failed()).isFalse();
  }

  @Test
  void whatPendsOnALostLineIsCountedAndTheNextLineGoesOn() throws Exception {
    greet();
    logger.raw((byte) 5, (byte) 1);
    line.pump();
    logger.gone = true;
    assertThatThrownBy(line::pump).isInstanceOf(LineGone.class);
    line.close();
    assertThat(incoming.counters().damaged()).isEqualTo(1);
    assertThat(incoming.counters().pending()).isZero();
    logger.gone = false;
    logger.encoder.skip();
    Greeting.over(new LoggerLine(logger, incoming, logger));
    assertThat(incoming.counters().lost()).isEqualTo(1);
    assertThat(incoming.described()).isTrue();
  }
}
