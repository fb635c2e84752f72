package tripline.harness.host;

import org.jspecify.annotations.Nullable;
import tripline.harness.serial.LineGone;
import tripline.link.Answer;
import tripline.link.Encoding;
import tripline.link.Hello;
import tripline.link.Identity;
import tripline.link.Result;
import tripline.link.Talk;

/**
 * How a host begins (SPEC H1): brings the logger's decoder to its beginning, says hello as a frame
 * and as a line, and learns who is there. A logger that cannot receive is heard out until it has
 * described itself (SPEC L2).
 */
public final class Greeting {
  /** Version of the protocol this host speaks. */
  public static final int MAJOR = 1;

  public static final int MINOR = 0;

  /** How a logger takes part. */
  public enum Partner {
    /** It answers. */
    ANSWERS,
    /** It talks and cannot receive. */
    TALKS_ONLY
  }

  /** A logger that cannot receive describes itself at least every ten seconds (SPEC L2). */
  public static final long DESCRIBED_NS = 11_000_000_000L;

  private static final int DESCRIPTION_TRIES = 3;
  private static final byte[] OPENING = {'\n', 0, 0};
  private static final int FRAMES_BIT = 1;

  private final LoggerLine line;
  private final Incoming incoming;

  private Greeting(LoggerLine line) {
    this.line = line;
    this.incoming = line.incoming();
  }

  /**
   * Greets; afterwards the logger is described, and talks in frames if it can.
   *
   * @throws NoAnswer if nobody speaks there, or not this protocol
   * @throws LineGone if the line is lost
   */
  public static Partner over(LoggerLine line) throws LineGone, NoAnswer {
    return new Greeting(line).greet();
  }

  private Partner greet() throws LineGone, NoAnswer {
    long bytesBefore = incoming.bytes();
    long messagesBefore = incoming.messages();
    line.write(OPENING);
    @Nullable Answer answer = hello();
    if (answer == null && incoming.messages() == messagesBefore) {
      throw new NoAnswer(line.name(), nobody(incoming.bytes() - bytesBefore));
    }
    if (answer == null) {
      hearOut();
      understood();
      return Partner.TALKS_ONLY;
    }
    complete();
    Identity identity = understood();
    if (incoming.encoding() == Encoding.LINES && (identity.encodings() & FRAMES_BIT) != 0) {
      line.ask(new Hello(MAJOR, MINOR, Talk.FRAMES.code()));
      complete();
    }
    return Partner.ANSWERS;
  }

  private @Nullable Answer hello() throws LineGone {
    Hello hello = new Hello(MAJOR, MINOR, Talk.KEEP.code());
    int sequence = line.takeSequence();
    for (int tries = 0; tries < LoggerLine.TRIES; tries++) {
      for (Encoding encoding : Encoding.values()) {
        @Nullable Answer answer = line.attempt(hello, sequence, encoding);
        if (answer != null) {
          return answer;
        }
      }
    }
    return null;
  }

  private static String nobody(long bytes) {
    return bytes == 0
        ? "no logger answers on this port, not a byte came"
        : "no logger answers on this port: of the %d bytes that came none make a message (is the baud rate right?)"
            .formatted(bytes);
  }

  /** Some of the description may have been damaged on the way. */
  private void complete() throws LineGone, NoAnswer {
    for (int i = 0; !incoming.described() && i < DESCRIPTION_TRIES; i++) {
      Answer answer = line.ask(new Hello(MAJOR, MINOR, Talk.KEEP.code()));
      if (answer.result() != Result.DONE) {
        throw new NoAnswer(line.name(), "the logger refuses hello: " + answer.result());
      }
    }
    if (!incoming.described()) {
      throw new NoAnswer(line.name(), "the logger does not describe its channels");
    }
  }

  private void hearOut() throws LineGone, NoAnswer {
    long wholeNs = 0;
    while (!incoming.described() && wholeNs < DESCRIBED_NS) {
      line.pumpFor(LoggerLine.ANSWER_NS);
      wholeNs += LoggerLine.ANSWER_NS;
    }
    if (!incoming.described()) {
      throw new NoAnswer(
          line.name(), "the logger answers nothing and does not describe itself within 11 s");
    }
  }

  private Identity understood() throws NoAnswer {
    @Nullable Identity identity = incoming.identity();
    if (identity == null) {
      throw new NoAnswer(line.name(), "the logger does not say who it is");
    }
    if (identity.major() != MAJOR) {
      throw new NoAnswer(
          line.name(),
          "the logger speaks version %d.%d of the link, this program version %d.%d"
              .formatted(identity.major(), identity.minor(), MAJOR, MINOR));
    }
    return identity;
  }
}
