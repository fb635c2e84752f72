package tripline.harness.conform;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import tripline.link.Answer;
import tripline.link.BodySink;
import tripline.link.ChannelDescription;
import tripline.link.ChannelKind;
import tripline.link.EdgeBlock;
import tripline.link.Encoding;
import tripline.link.LinkDecoder;
import tripline.link.LinkEncoder;
import tripline.link.LinkMessage;
import tripline.link.LoggerState;
import tripline.link.MarkMessage;
import tripline.link.MessageType;
import tripline.link.Reports;
import tripline.link.Result;
import tripline.link.SampleBlock;
import tripline.link.Status;
import tripline.link.Stored;

/** Loggers with one fault each, as firmware might have it, and the line they are to fail on. */
enum BrokenLoggers {
  HELLO_WITHOUT_ITS_LAST_CHANNEL(Duty.HELLO, ForgetsAChannel::new),
  ANSWERS_NAME_A_WRONG_COMMAND(Duty.ANSWERS, WrongCommand::new),
  ANSWERS_AFTER_700_MS(Duty.IN_TIME, Late::new),
  ANSWERS_PLACE_BEFORE_ITS_MARK(Duty.PLACES, AnswerFirst::new),
  DOES_NOT_COUNT_DAMAGE(Duty.DAMAGE, CountsNothing::new),
  ANSWERS_MALFORMED_WITH_FAILED(Duty.MALFORMED, SaysFailed::new),
  LEAVES_GAPS_IN_THE_SEQUENCE(Duty.SEQUENCE, Gaps::new),
  LOSES_SAMPLES_IN_SILENCE(Duty.NUMBERS, SilentLoss::new),
  GATHERS_FOR_TOO_LONG(Duty.GATHER, SlowBlocks::new),
  SENDS_MARKS_LATE(Duty.PROMPT, SlowMarks::new),
  SENDS_NO_STATUS_UNASKED(Duty.STATUS, NoStatus::new),
  STAMPS_BLOCKS_UNEVENLY(Duty.STAMPS, Uneven::new),
  STAMPS_STEP_BACK(Duty.FORWARD, TornTimer::new),
  SENDS_EDGES_AFTER_LATER_ROWS(Duty.BEFORE, EdgesAfter::new),
  REPEATS_EDGES(Duty.CHANGES, DoubledEdges::new),
  PUTS_EDGE_CONTACTS_INTO_ROWS(Duty.CHANGES, EdgesInRows::new),
  BEGINS_WITHOUT_A_CONTACT(Duty.FIRST_ROW, FirstRowShort::new),
  TEARS_A_FRAME(Duty.WHOLE, Torn::new),
  OBEYS_TWICE(Duty.RETRY, ObeysTwice::new),
  CHANGES_ITS_ENCODING_WITHOUT_A_ZERO_BYTE(Duty.ENCODING, NoZero::new),
  HAS_A_NEW_SESSION_EACH_TIME(Duty.SESSION, Sessions::new),
  SENDS_A_MESSAGE_OF_NO_TABLE(Duty.WELL_FORMED, Strange::new),
  TAKES_NO_LATER_FIELDS(Duty.LATER_FIELDS, ShortSighted::new),
  FORGETS_THE_TIME_OF_DAY(Duty.CLOCK, NoUtc::new),
  SAYS_BUSY_FOR_NOT_NOW(Duty.REFUSALS, SaysBusy::new),
  REFUSES_QUERY_WHILE_IT_RUNS(Duty.EVERY_STATE, NoQuery::new),
  SAMPLES_AT_ANOTHER_RATE_THAN_ANSWERED(Duty.RATES, WrongRate::new),
  SENDS_A_BLOCK_AFTER_STOP(Duty.STOPS, LastBlockLate::new),
  LISTS_A_WRONG_CHECK(Duty.STORED, WrongCheck::new),
  LISTS_A_WRONG_NUMBER_OF_SAMPLES(Duty.STREAM, WrongSamples::new),
  HAS_A_TIME_OUT_INSIDE_FRAMES(Duty.PATIENCE, Impatient::new),
  HEARS_ONLY_THE_ENCODING_IT_TALKS(Duty.BOTH_WAYS, OneEared::new);

  final Duty duty;

  /** Makes a new one each time. */
  @SuppressWarnings("ImmutableEnumChecker")
  private final Supplier<Broken> make;

  BrokenLoggers(Duty duty, Supplier<Broken> make) {
    this.duty = duty;
    this.make = make;
  }

  Broken make() {
    return make.get();
  }

  /** Knows what the host said last. */
  private abstract static class Eavesdropper extends Broken {
    final LinkDecoder overheard =
        new LinkDecoder(
            new BodySink() {
              @Override
              public void onBody(MessageType type, byte[] body, int length) {
                command(type, BodySink.sequence(body));
              }

              @Override
              public void onSetAside(Cause cause, byte[] body, int length) {
                refused(cause);
              }
            });

    void command(MessageType type, int sequence) {}

    void refused(BodySink.Cause cause) {}

    @Override
    byte[] toLogger(byte[] bytes, long atNs) {
      overheard.accept(bytes, 0, bytes.length);
      return super.toLogger(bytes, atNs);
    }
  }

  private static final class ForgetsAChannel extends Broken {
    @Override
    void message(LinkMessage message) {
      if (!(message instanceof ChannelDescription channel && channel.name().equals("m2"))) {
        say(message);
      }
    }
  }

  private static final class WrongCommand extends Broken {
    @Override
    void message(LinkMessage message) {
      say(
          message instanceof Answer answer && answer.commandCode() == MessageType.TIME.code()
              ? new Answer(
                  MessageType.RATE.code(), answer.resultCode(), answer.to(), answer.value())
              : message);
    }
  }

  private static final class Late extends Broken {
    @Override
    void message(LinkMessage message) {
      if (message instanceof Answer answer && answer.commandCode() == MessageType.RATE.code()) {
        hold(message, 700_000_000);
      } else {
        say(message);
      }
    }
  }

  private static final class AnswerFirst extends Broken {
    private @Nullable LinkMessage mark;

    @Override
    void message(LinkMessage message) {
      LinkMessage kept = mark;
      if (message instanceof MarkMessage) {
        mark = message;
      } else if (kept != null && message instanceof Answer) {
        say(message);
        say(kept);
        mark = null;
      } else {
        say(message);
      }
    }
  }

  private static Status status(Status s, long utc, long session, long stamp, long bad) {
    return new Status(
        s.stateCode(),
        s.utcSourceCode(),
        s.backlog(),
        stamp,
        utc,
        session,
        s.rateMilliHz(),
        s.samples(),
        s.samplesLost(),
        s.edgesLost(),
        s.messagesDropped(),
        bad);
  }

  private static final class CountsNothing extends Eavesdropper {
    @Override
    void message(LinkMessage message) {
      say(
          message instanceof Status s
              ? status(
                  s,
                  s.utcMicros(),
                  s.session(),
                  s.stampMicros(),
                  s.badReceived() - overheard.counters().damaged())
              : message);
    }
  }

  private static final class SaysFailed extends Eavesdropper {
    private boolean malformed;

    @Override
    void refused(BodySink.Cause cause) {
      malformed = cause == BodySink.Cause.MALFORMED;
    }

    @Override
    void message(LinkMessage message) {
      if (malformed && message instanceof Answer answer) {
        malformed = false;
        say(new Answer(answer.commandCode(), Result.FAILED.code(), answer.to(), 0));
      } else {
        say(message);
      }
    }
  }

  private static final class Gaps extends Broken {
    @Override
    void message(LinkMessage message) {
      if (sequence() % 40 == 39) {
        skip();
      }
      say(message);
    }
  }

  private static final class SilentLoss extends Broken {
    private int blocks;

    @Override
    void message(LinkMessage message) {
      if (!(message instanceof SampleBlock) || ++blocks % 12 != 0) {
        say(message);
      }
    }
  }

  private static final class SlowBlocks extends Broken {
    private final Deque<LinkMessage> kept = new ArrayDeque<>();
    private final Deque<Long> due = new ArrayDeque<>();

    @Override
    void message(LinkMessage message) {
      if (message instanceof SampleBlock) {
        kept.add(message);
        due.add(nowNs() + 400_000_000);
        return;
      }
      if (message instanceof Status status && status.state() == LoggerState.IDLE) {
        kept.forEach(this::say);
        kept.clear();
        due.clear();
      }
      say(message);
    }

    @Override
    void tick() {
      while (!due.isEmpty() && due.getFirst() <= nowNs()) {
        due.remove();
        say(kept.remove());
      }
    }
  }

  private static final class SlowMarks extends Broken {
    @Override
    void message(LinkMessage message) {
      if (message instanceof MarkMessage) {
        hold(message, 150_000_000);
      } else {
        say(message);
      }
    }
  }

  private static final class NoStatus extends Eavesdropper {
    private boolean asked = true;

    @Override
    void command(MessageType type, int sequence) {
      asked |= type == MessageType.QUERY || type == MessageType.HELLO || type == MessageType.STOP;
    }

    @Override
    void message(LinkMessage message) {
      boolean status = message instanceof Status;
      boolean running = message instanceof Status s && s.state() == LoggerState.RUNNING;
      if (!running || asked) {
        say(message);
      }
      asked &= !status;
    }
  }

  /** Rows again, under another stamp or other contacts. */
  private static SampleBlock block(SampleBlock b, long stamp, long period, long known) {
    SampleBlock again = new SampleBlock().begin(b.number(), stamp, period, known);
    for (int row = 0; row < b.rows(); row++) {
      again.add(b.counts(row), b.levels(row), 0);
    }
    return again;
  }

  private static final class Uneven extends Broken {
    private int blocks;

    @Override
    void message(LinkMessage message) {
      if (message instanceof SampleBlock b && b.rows() > 1) {
        // Cut to less than its rows take, so that no block overlaps the next.
        long off = ++blocks % 3 == 1 ? 2900 : 0;
        say(block(b, b.stampMicros() + off, b.periodNs() - 2_900_000 / b.rows(), b.known()));
      } else {
        say(message);
      }
    }
  }

  private static final class TornTimer extends Broken {
    private int statuses;

    @Override
    void message(LinkMessage message) {
      if (message instanceof Status s && s.state() == LoggerState.RUNNING && ++statuses % 3 == 0) {
        say(status(s, s.utcMicros(), s.session(), s.stampMicros() - 2_000_000, s.badReceived()));
      } else {
        say(message);
      }
    }
  }

  private static final class EdgesAfter extends Broken {
    private int edges;
    private @Nullable LinkMessage kept;

    @Override
    void message(LinkMessage message) {
      if (message instanceof EdgeBlock && ++edges % 3 == 1) {
        kept = message;
        return;
      }
      say(message);
      if (message instanceof SampleBlock && kept != null) {
        say(kept);
        kept = null;
      }
    }
  }

  private static final class DoubledEdges extends Broken {
    private long number;

    @Override
    void message(LinkMessage message) {
      if (message instanceof EdgeBlock e) {
        if (e.number() == 0) {
          number = 0;
        }
        EdgeBlock again = new EdgeBlock().begin(number, e.stampMicros(), e.fractionNs());
        for (int i = 0; i < e.edges(); i++) {
          again.add(e.gapNs(i), e.contact(i), e.level(i));
          again.add(0, e.contact(i), e.level(i));
          number += 2;
        }
        say(again);
      } else {
        say(message);
      }
    }
  }

  private static final class EdgesInRows extends Broken {
    @Override
    void message(LinkMessage message) {
      if (message instanceof ChannelDescription c
          && c.kind() == ChannelKind.CONTACT
          && c.reports() == Reports.BOTH) {
        say(
            ChannelDescription.contact(
                c.number(),
                c.name(),
                c.closedLevel(),
                Reports.EDGES,
                c.delayNs(),
                c.resolutionNs()));
      } else {
        say(message);
      }
    }
  }

  private static final class FirstRowShort extends Broken {
    @Override
    void message(LinkMessage message) {
      say(
          message instanceof SampleBlock b && b.number() == 0
              ? block(b, b.stampMicros(), b.periodNs(), b.known() & ~4L)
              : message);
    }
  }

  private static final class Torn extends Broken {
    private int blocks;

    @Override
    void message(LinkMessage message) {
      if (message instanceof SampleBlock && ++blocks % 15 == 0) {
        LinkEncoder apart = new LinkEncoder();
        byte[] bytes = encoded(message, apart);
        byte[] torn = Arrays.copyOf(bytes, bytes.length / 2);
        torn[torn.length - 1] = (byte) (encoding() == Encoding.LINES ? '\n' : 0);
        raw(torn);
        skip();
      } else {
        say(message);
      }
    }
  }

  /** Every command is a new one to it. */
  private static final class ObeysTwice extends Broken {
    private final List<Integer> asked = new ArrayList<>();
    private final LinkEncoder encoder = new LinkEncoder();
    private byte[] passed = {};
    private final LinkDecoder decoder =
        new LinkDecoder(
            new BodySink() {
              @Override
              public void onBody(MessageType type, byte[] body, int length) {
                asked.add(BodySink.sequence(body));
                byte[] out = new byte[LinkEncoder.MOST_BYTES];
                Encoding as = decoder.encoding() == null ? Encoding.FRAMES : decoder.encoding();
                int n = encoder.encode(LinkMessage.read(type, body), as, out, 0);
                passed = Arrays.copyOf(out, n);
              }
            });

    @Override
    byte[] toLogger(byte[] bytes, long atNs) {
      super.toLogger(bytes, atNs);
      passed = new byte[0];
      decoder.accept(bytes, 0, bytes.length);
      boolean begun = decoder.counters().pending() > 0;
      return passed.length > 0 || begun ? passed : bytes;
    }

    @Override
    void message(LinkMessage message) {
      boolean mine =
          message instanceof Answer a && a.to() < asked.size() && a.result() != Result.NOT_KNOWN;
      say(
          mine && message instanceof Answer a
              ? new Answer(a.commandCode(), a.resultCode(), asked.get(a.to()), a.value())
              : message);
    }
  }

  private static final class NoZero extends Broken {
    @Override
    void turn() {}
  }

  private static final class Sessions extends Broken {
    private int hellos;

    @Override
    void message(LinkMessage message) {
      say(
          message instanceof Status s
              ? status(
                  s, s.utcMicros(), s.session() + ++hellos % 2, s.stampMicros(), s.badReceived())
              : message);
    }
  }

  private static final class Strange extends Broken {
    private int marks;

    @Override
    void message(LinkMessage message) {
      if (message instanceof MarkMessage && ++marks % 3 == 0 && encoding() == Encoding.FRAMES) {
        raw(Wire.frame(0x30, 0, sequence() & 0xff, sequence() >> 8, 1));
        skip();
      }
      say(message);
    }
  }

  private static final class ShortSighted extends Broken {
    @Override
    byte[] toLogger(byte[] bytes, long atNs) {
      super.toLogger(bytes, atNs);
      boolean later = bytes.length > 60 && bytes[0] == 2 && bytes[1] == 0x49;
      return later ? new byte[0] : bytes;
    }
  }

  private static final class NoUtc extends Broken {
    @Override
    void message(LinkMessage message) {
      say(
          message instanceof Status s
              ? status(s, 0, s.session(), s.stampMicros(), s.badReceived())
              : message);
    }
  }

  private static LinkMessage instead(LinkMessage message, Result of, Result then) {
    return message instanceof Answer a && a.result() == of
        ? new Answer(a.commandCode(), then.code(), a.to(), 0)
        : message;
  }

  private static final class SaysBusy extends Broken {
    @Override
    void message(LinkMessage message) {
      say(instead(message, Result.NOT_NOW, Result.FAILED));
    }
  }

  private static final class NoQuery extends Broken {
    private boolean running;

    @Override
    void message(LinkMessage message) {
      if (message instanceof Status s) {
        running = s.state() == LoggerState.RUNNING;
      }
      boolean query = message instanceof Answer a && a.commandCode() == MessageType.QUERY.code();
      say(running && query ? instead(message, Result.DONE, Result.NOT_NOW) : message);
    }
  }

  private static final class WrongRate extends Broken {
    @Override
    void message(LinkMessage message) {
      say(
          message instanceof Answer a
                  && a.commandCode() == MessageType.START.code()
                  && a.result() == Result.DONE
              ? new Answer(a.commandCode(), a.resultCode(), a.to(), a.value() * 11 / 10)
              : message);
    }
  }

  private static final class LastBlockLate extends Broken {
    private @Nullable LinkMessage last;

    @Override
    void message(LinkMessage message) {
      LinkMessage kept = last;
      if (message instanceof SampleBlock) {
        if (kept != null) {
          say(kept);
        }
        last = message;
        return;
      }
      boolean stopped = message instanceof Answer a && a.commandCode() == MessageType.STOP.code();
      say(message);
      if (stopped && kept != null) {
        say(kept);
        last = null;
      }
    }
  }

  private static Stored stored(Stored s, long check, long samples) {
    return new Stored(
        s.index(),
        s.count(),
        s.id(),
        s.bytes(),
        check,
        samples,
        s.startedMicros(),
        s.durationMicros(),
        s.label());
  }

  private static final class WrongCheck extends Broken {
    @Override
    void message(LinkMessage message) {
      say(message instanceof Stored s ? stored(s, s.check() ^ 1, s.samples()) : message);
    }
  }

  private static final class WrongSamples extends Broken {
    @Override
    void message(LinkMessage message) {
      say(message instanceof Stored s ? stored(s, s.check(), s.samples() + 1) : message);
    }
  }

  /** What has begun and not ended within a second is thrown away. */
  private static final class Impatient extends Broken {
    private boolean begun;
    private long sinceNs;

    @Override
    byte[] toLogger(byte[] bytes, long atNs) {
      super.toLogger(bytes, atNs);
      boolean late = begun && atNs - sinceNs > 1_000_000_000L;
      begun = bytes[bytes.length - 1] != 0 && bytes[bytes.length - 1] != '\n';
      sinceNs = atNs;
      return late ? new byte[] {0} : bytes;
    }
  }

  private static final class OneEared extends Broken {
    @Override
    byte[] toLogger(byte[] bytes, long atNs) {
      super.toLogger(bytes, atNs);
      boolean line = bytes.length > 2 && bytes[bytes.length - 1] == '\n' && bytes[0] > 0x20;
      boolean frame = bytes.length > 2 && bytes[bytes.length - 1] == 0;
      boolean other = encoding() == Encoding.FRAMES ? line : frame;
      return other ? new byte[0] : bytes;
    }
  }
}
