package tripline.harness.conform;

import java.util.EnumSet;
import java.util.Set;

/** What a logger is held to: one line of the answer each, named by the clause of the protocol. */
public enum Duty {
  POWER_UP("L1", "switched on: a delimiter, identity, every channel, status"),
  REPEATS("L2", "without receiving: samples; identity, channels at least every 10 s"),
  HELLO("L3", "hello: identity, channels in order, status, then the answer"),
  ANSWERS("L3", "every command is answered once, with its type and sequence"),
  IN_TIME("L3", "an answer begins within 500 ms"),
  PLACES("L3", "what stands before and after an answer stands there"),
  DAMAGE("L4", "damaged input is counted, and nothing sent because of it"),
  MALFORMED("L4", "malformed commands are counted, and answered bad-value"),
  SEQUENCE("L5", "no gap in the sequence but for messages it counts as dropped"),
  NUMBERS("L6", "samples and edges numbered one by one, losses announced"),
  GATHER("L7", "a block is sent when its first sample is as old as gather"),
  PROMPT("L7", "edges and marks are sent within 20 ms"),
  STATUS("L8", "while running, a status at least once a second"),
  STAMPS("L9", "rows are stamped when they were taken"),
  FORWARD("L10", "stamps never run backwards"),
  BEFORE("L10", "edges and marks are sent before blocks with later rows"),
  CHANGES("L11", "each change once; contacts in rows or in edges as described"),
  FIRST_ROW("L12", "the first samples hold every contact"),
  WHOLE("L13", "whatever it sends is whole"),
  RETRY("L14", "a command that is said again is not obeyed again"),
  ENCODING("L15", "one encoding until hello asks for the other, a zero byte between"),
  SESSION("L16", "one session while clock and counters run on"),
  WELL_FORMED("§5", "every message has the fields and ranges of its table"),
  LATER_FIELDS("§3", "bytes after the last known field are ignored, up to body_limit"),
  CLOCK("§4", "the clock counts microseconds, and setting the time leaves it alone"),
  REFUSALS("§6", "not-known, not-fitted, not-now and bad-value where they are due"),
  EVERY_STATE("§6", "hello, query, place and time work while it runs, and stop nothing"),
  RATES("§6", "rates: the nearest for rate, refused by start, in force as answered"),
  STOPS("§6", "stop: all that was sampled, the right counts, then silence"),
  STORED("§6", "list and fetch bring whole recordings with the stated check"),
  STREAM("§5", "a stored recording is a link stream that describes itself"),
  PATIENCE("§6", "no time-out inside a frame or a line"),
  BOTH_WAYS("§6", "commands are taken in every encoding it has");

  private static final Set<Duty> TOLD_BY_LISTENING =
      EnumSet.of(
          REPEATS,
          SEQUENCE,
          NUMBERS,
          PROMPT,
          STATUS,
          STAMPS,
          FORWARD,
          BEFORE,
          CHANGES,
          WHOLE,
          SESSION,
          WELL_FORMED,
          ENCODING);

  private final String clause;
  private final String sentence;

  Duty(String clause, String sentence) {
    this.clause = clause;
    this.sentence = sentence;
  }

  /** Whether it takes commands and their answers to try it. */
  boolean needsAnswers() {
    return !TOLD_BY_LISTENING.contains(this);
  }

  /** Number of the duty, or section of the specification. */
  public String clause() {
    return clause;
  }

  /** What is to be seen. */
  public String sentence() {
    return sentence;
  }
}
