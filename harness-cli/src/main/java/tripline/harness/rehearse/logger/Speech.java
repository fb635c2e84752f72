package tripline.harness.rehearse.logger;

import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;
import tripline.link.Identity;
import tripline.link.LinkMessage;
import tripline.link.LoggerState;
import tripline.link.MarkMessage;
import tripline.link.MarkSource;
import tripline.link.Status;
import tripline.link.UtcSource;

/** What a logger says of itself: who it is, how it is, and what somebody pressed. */
final class Speech {
  /** Well below the second of SPEC L8. */
  private static final long STATUS_NS = 900_000_000L;

  private static final int MARK_WRAP = 0xffff;
  private static final long WRAP = 0xffff_ffffL;

  private final LoggerMake make;
  private final long session;
  private final LoggerClock clock;
  private final TransmitBuffer buffer;
  private final Sampler sampler;
  private final BooleanSupplier sending;
  private final LongSupplier badReceived;
  private int marks;
  private long statusNs;

  Speech(
      LoggerMake make,
      long session,
      LoggerClock clock,
      TransmitBuffer buffer,
      Sampler sampler,
      BooleanSupplier sending,
      LongSupplier badReceived) {
    this.make = make;
    this.session = session;
    this.clock = clock;
    this.buffer = buffer;
    this.sampler = sampler;
    this.sending = sending;
    this.badReceived = badReceived;
  }

  void say(LinkMessage message) {
    buffer.send(message);
  }

  /** Identity and every channel. */
  void describe() {
    Identity said = make.identity();
    say(
        new Identity(
            said.major(),
            said.minor(),
            said.clockBits(),
            said.contacts(),
            said.positions(),
            said.encodings(),
            said.bodyLimit(),
            said.abilities(),
            session,
            said.rateMinMilliHz(),
            said.rateMaxMilliHz(),
            said.model(),
            said.serial(),
            said.firmware()));
    make.channels().forEach(this::say);
  }

  void status(long nowNs) {
    LoggerState state =
        sampler.running()
            ? LoggerState.RUNNING
            : sending.getAsBoolean() ? LoggerState.SENDING : LoggerState.IDLE;
    UtcSource source = clock.utcKnown() ? UtcSource.HOST : UtcSource.NONE;
    say(
        new Status(
            state.code(),
            source.code(),
            buffer.takeFullest(),
            clock.stamp(nowNs),
            clock.utc(nowNs),
            session,
            sampler.rateMilliHz(),
            sampler.samples() & WRAP,
            sampler.samplesLost(),
            0,
            buffer.dropped(),
            badReceived.getAsLong()));
    statusNs = nowNs;
  }

  /** While it samples, the next status is due (SPEC L8). */
  void statusIfDue(long nowNs) {
    if (nowNs - statusNs >= STATUS_NS) {
      status(nowNs);
    }
  }

  /** Sampling begins: marks are numbered anew, and the first status is due in a while. */
  void begin(long nowNs) {
    marks = 0;
    statusNs = nowNs;
  }

  /** A mark; returns its number. */
  int mark(int kind, MarkSource source, String text, long nowNs) {
    int number = marks;
    say(new MarkMessage(kind, source.code(), number, clock.stamp(nowNs), text));
    marks = (marks + 1) & MARK_WRAP;
    return number;
  }
}
