package tripline.harness.host;

import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import tripline.harness.serial.ByteLine;
import tripline.harness.serial.LineGone;
import tripline.link.Answer;
import tripline.link.Encoding;
import tripline.link.LinkEncoder;
import tripline.link.LinkMessage;
import tripline.link.MessageType;
import tripline.link.Result;

/**
 * One line to a logger: reads it, and sends commands, one at a time, each until it is answered
 * (SPEC §6, H2, H3). While an answer is waited for all else that comes is taken as ever.
 */
public final class LoggerLine implements AutoCloseable {
  static final int READ_BYTES = 8192;

  /** An answer begins to arrive within this (SPEC §6). */
  static final long ANSWER_NS = 500_000_000L;

  /** A command is sent this many times in all (SPEC H3). */
  static final int TRIES = 3;

  /**
   * Longest that one try waits while the logger sends what stands before the answer: 64 channels
   * take this long at 9600 baud.
   */
  static final long MOST_NS = 6_000_000_000L;

  /** A logger that samples and sends no whole message for so long has failed (SPEC H4). */
  static final long SILENT_NS = 3_000_000_000L;

  private static final int BUSY_TRIES = 8;
  private static final long BUSY_NS = 200_000_000L;
  private static final byte[] DELIMITER = {0};

  private final ByteLine line;
  private final Incoming incoming;
  private final LongSupplier nanoTime;
  private final LinkEncoder encoder = new LinkEncoder();
  private final byte[] in = new byte[READ_BYTES];
  private final byte[] out = new byte[LinkEncoder.MOST_BYTES];
  private @Nullable Encoding spoken;
  private long lastMessages;
  private long lastMessageNs;

  /**
   * @param line open
   * @param incoming takes what comes; may have been fed from an earlier line
   * @param nanoTime a clock that never steps, ns
   */
  public LoggerLine(ByteLine line, Incoming incoming, LongSupplier nanoTime) {
    this.line = line;
    this.incoming = incoming;
    this.nanoTime = nanoTime;
    this.lastMessages = incoming.messages();
    this.lastMessageNs = nanoTime.getAsLong();
  }

  /** The port, as the user named it. */
  public String name() {
    return line.name();
  }

  /** What comes from the logger. */
  public Incoming incoming() {
    return incoming;
  }

  /**
   * Takes what has come, or waits a tenth of a second for it.
   *
   * @return bytes taken
   * @throws LineGone if the line is lost
   */
  public int pump() throws LineGone {
    int got = line.read(in);
    if (got > 0) {
      incoming.accept(in, got);
    }
    if (incoming.messages() != lastMessages) {
      lastMessages = incoming.messages();
      lastMessageNs = nanoTime.getAsLong();
    }
    return got;
  }

  /** Takes what comes for so long, ns. */
  public void pumpFor(long durationNs) throws LineGone {
    long startNs = nanoTime.getAsLong();
    while (nanoTime.getAsLong() - startNs < durationNs) {
      pump();
    }
  }

  /** Time since the last whole message, or since this line was opened, ns. */
  public long silentNs() {
    return nanoTime.getAsLong() - lastMessageNs;
  }

  /** Whether a logger that samples has been silent for too long (SPEC H4). */
  public boolean failed() {
    return incoming.running() && silentNs() > SILENT_NS;
  }

  /**
   * Sends a command until it is answered; a logger that is busy is asked again for two seconds.
   *
   * @return the answer, which may be a refusal
   * @throws NoAnswer if there is none
   * @throws LineGone if the line is lost
   */
  public Answer ask(LinkMessage command) throws LineGone, NoAnswer {
    Answer answer = askOnce(command);
    for (int i = 0; answer.result() == Result.BUSY && i < BUSY_TRIES; i++) {
      pumpFor(BUSY_NS);
      answer = askOnce(command);
    }
    return answer;
  }

  private Answer askOnce(LinkMessage command) throws LineGone, NoAnswer {
    int sequence = takeSequence();
    for (int tries = 0; tries < TRIES; tries++) {
      @Nullable Answer answer = attempt(command, sequence, incoming.encoding());
      if (answer != null) {
        return answer;
      }
    }
    throw new NoAnswer(
        line.name(), "the logger does not answer the command " + command.type().word());
  }

  /** Sequence of the next command. */
  int takeSequence() {
    int sequence = encoder.nextSequence();
    encoder.skip();
    return sequence;
  }

  /** Sends a command once and waits for its answer; null if none came in time. */
  @Nullable Answer attempt(LinkMessage command, int sequence, Encoding encoding) throws LineGone {
    if (spoken != null && spoken != encoding) {
      line.write(DELIMITER, 1);
    }
    spoken = encoding;
    line.write(out, encoder.encode(command, sequence, encoding, out, 0));
    return await(command.type(), sequence);
  }

  /** Bytes that are no message. */
  void write(byte[] bytes) throws LineGone {
    line.write(bytes, bytes.length);
  }

  private @Nullable Answer await(MessageType command, int sequence) throws LineGone {
    long startNs = nanoTime.getAsLong();
    long progressNs = startNs;
    long seen = progress(command);
    while (true) {
      pump();
      @Nullable Answer answer = incoming.answerTo(command, sequence);
      if (answer != null) {
        return answer;
      }
      long nowNs = nanoTime.getAsLong();
      if (progress(command) != seen) {
        seen = progress(command);
        progressNs = nowNs;
      }
      if (nowNs - progressNs > ANSWER_NS || nowNs - startNs > MOST_NS) {
        return null;
      }
    }
  }

  /** Grows while what stands before the answer arrives; with other commands that is one message. */
  private long progress(MessageType command) {
    return switch (command) {
      case HELLO -> incoming.descriptions();
      case STOP -> incoming.messages();
      default -> 0;
    };
  }

  /** Closes the line; what was pending on it will not be completed. */
  @Override
  public void close() {
    line.close();
    incoming.lineClosed();
  }
}
