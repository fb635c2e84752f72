package tripline.harness.capture;

import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import tripline.harness.host.Greeting;
import tripline.harness.host.Incoming;
import tripline.harness.host.LoggerLine;
import tripline.harness.host.NoAnswer;
import tripline.harness.serial.ByteLine;
import tripline.harness.serial.LineGone;
import tripline.link.Ability;
import tripline.link.Answer;
import tripline.link.Identity;
import tripline.link.LoggerState;
import tripline.link.Place;
import tripline.link.Rate;
import tripline.link.Reports;
import tripline.link.Result;
import tripline.link.Start;
import tripline.link.Status;
import tripline.link.Stop;
import tripline.link.Time;

/** A line to a logger that was greeted and samples. */
final class Connection implements AutoCloseable {
  /** Which connection of a capture it is. */
  enum Turn {
    FIRST,
    AGAIN
  }

  /** Body of {@code place} without its text. */
  private static final int PLACE_BYTES = 6;

  private static final int MOST_TEXT = 120;

  private final LoggerLine line;
  private final InstantSource utc;
  private Greeting.Partner partner = Greeting.Partner.TALKS_ONLY;
  private boolean started;

  /**
   * @param line open
   * @param incoming takes what comes
   * @param nanoTime a clock that never steps, ns
   * @param utc the host's clock
   */
  Connection(ByteLine line, Incoming incoming, LongSupplier nanoTime, InstantSource utc) {
    this.line = new LoggerLine(line, incoming, nanoTime);
    this.utc = utc;
  }

  LoggerLine line() {
    return line;
  }

  /**
   * Greets the logger and lets it sample.
   *
   * <p>One that samples already is stopped first at the beginning of a capture, so that it states
   * every contact and counts from zero (SPEC L12); on a line that comes back it goes on, so that
   * its numbers tell what was missed, unless there are contacts of which it only reports edges.
   *
   * @param rateMilliHz wanted, mHz; 0: whatever the logger uses
   */
  void prepare(long rateMilliHz, Turn turn) throws LineGone, NoAnswer {
    partner = Greeting.over(line);
    if (can(Ability.TIME)) {
      line.ask(new Time(ChronoUnit.MICROS.between(Instant.EPOCH, utc.instant())));
    }
    if (!can(Ability.START_STOP)) {
      if (rateMilliHz > 0) {
        throw new NoAnswer(line.name(), "the logger cannot be told a rate, expected no --rate");
      }
      return;
    }
    LoggerState state = state();
    if (state == LoggerState.SENDING
        || (state == LoggerState.RUNNING && (turn == Turn.FIRST || hasEdgesOnly()))) {
      line.ask(new Stop());
      state = LoggerState.IDLE;
    }
    if (state == LoggerState.IDLE) {
      start(rateMilliHz);
    }
    started = true;
  }

  private void start(long rateMilliHz) throws LineGone, NoAnswer {
    if (rateMilliHz > 0) {
      Answer rated = line.ask(new Rate(rateMilliHz));
      if (rated.result() != Result.DONE) {
        throw refused("rate", rated);
      }
    }
    Answer answer = line.ask(new Start(0, 0));
    if (answer.result() != Result.DONE) {
      throw refused("start", answer);
    }
  }

  private NoAnswer refused(String command, Answer answer) {
    return new NoAnswer(
        line.name(),
        "the logger refuses the command %s: %s"
            .formatted(command, answer.result().name().toLowerCase(Locale.ROOT).replace('_', '-')));
  }

  private LoggerState state() {
    @Nullable Status status = line.incoming().status();
    return status == null ? LoggerState.IDLE : status.state();
  }

  private boolean hasEdgesOnly() {
    return line.incoming().channels().stream().anyMatch(c -> c.reports() == Reports.EDGES);
  }

  private boolean can(Ability ability) {
    @Nullable Identity identity = line.incoming().identity();
    return partner == Greeting.Partner.ANSWERS && identity != null && identity.can(ability);
  }

  /**
   * Whether it has been silent for longer than it may: three seconds while it samples (SPEC H4),
   * and as long as a logger that cannot receive may take to describe itself (L2).
   */
  boolean failed() {
    return line.failed()
        || (partner == Greeting.Partner.TALKS_ONLY && line.silentNs() > Greeting.DESCRIBED_NS);
  }

  /** Whether the logger takes marks of the host and stamps them. */
  boolean takesMarks() {
    return can(Ability.PLACE);
  }

  /**
   * Puts a mark into the logger's stream.
   *
   * @return whether it did
   */
  boolean place(int kindCode, String text) throws LineGone {
    try {
      return line.ask(new Place(kindCode, fitting(text))).result() == Result.DONE;
    } catch (NoAnswer e) {
      return false;
    }
  }

  /** Cut to what the logger can receive. */
  private String fitting(String text) {
    @Nullable Identity identity = line.incoming().identity();
    int limit = identity == null ? MOST_TEXT : identity.bodyLimit() - PLACE_BYTES;
    return Utf8Text.cut(text, Math.min(MOST_TEXT, limit));
  }

  /** Stops the logger if it was started here, and takes what it still has to say. */
  void stop() throws LineGone, NoAnswer {
    if (started) {
      line.ask(new Stop());
    }
  }

  @Override
  public void close() {
    line.close();
  }
}
