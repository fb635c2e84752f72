package tripline.harness.rehearse.logger;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tripline.link.Ability;
import tripline.link.Answer;
import tripline.link.BodySink;
import tripline.link.Encoding;
import tripline.link.Fetch;
import tripline.link.Hello;
import tripline.link.Identity;
import tripline.link.LinkMessage;
import tripline.link.MarkSource;
import tripline.link.MessageType;
import tripline.link.Place;
import tripline.link.Rate;
import tripline.link.Result;
import tripline.link.Start;
import tripline.link.Talk;
import tripline.link.Time;

/**
 * What a logger does when it is told something (SPEC §6). Longer than other classes: every command
 * is here, beside the states it is obeyed in.
 */
final class Obedience implements CommandEar.Listener {
  /** Used until the host sets one: 1 kHz. */
  private static final long USUAL_RATE = 1_000_000;

  private static final int FRAMES_BIT = 1;
  private static final int LINES_BIT = 2;

  private final Identity identity;
  private final Memory memory;
  private final LoggerClock clock;
  private final TransmitBuffer buffer;
  private final Sampler sampler;
  private final CommandEar ear = new CommandEar(this);
  private final Speech speech;
  private @Nullable Sending sending;
  private long rateSet;
  private long nowNs;

  /** The command answered last, for a host that asks again. */
  private int lastCommand = -1;

  private @Nullable Answer lastAnswer;

  Obedience(
      LoggerMake make,
      long session,
      Memory memory,
      LoggerClock clock,
      TransmitBuffer buffer,
      Sampler sampler) {
    identity = make.identity();
    this.memory = memory;
    this.clock = clock;
    this.buffer = buffer;
    this.sampler = sampler;
    rateSet = Math.max(identity.rateMinMilliHz(), Math.min(USUAL_RATE, identity.rateMaxMilliHz()));
    speech = new Speech(make, session, clock, buffer, sampler, () -> sending != null, ear::bad);
  }

  Speech speech() {
    return speech;
  }

  /** Bytes from the host, now. */
  void hear(byte[] bytes, int from, int length, long atNs) {
    nowNs = atNs;
    ear.hear(bytes, from, length);
  }

  /** Goes on with a stored recording that is on its way. */
  void goOn(long atNs) {
    nowNs = atNs;
    if (sending != null && sending.go(buffer)) {
      sending = null;
      speech.status(nowNs);
    }
  }

  @Override
  public void onRefused(BodySink.Cause why, int commandCode, int sequence) {
    Result result = why == BodySink.Cause.MALFORMED ? Result.BAD_VALUE : Result.NOT_KNOWN;
    speech.say(new Answer(commandCode, result.code(), sequence, 0));
  }

  @Override
  public void onCommand(LinkMessage command, int sequence) {
    Answer before = lastAnswer;
    boolean again =
        before != null && lastCommand == command.type().code() && before.to() == sequence;
    if (again && before != null && obeyedOnce(command.type())) {
      speech.say(before);
      return;
    }
    if (again && command instanceof Fetch) {
      sending = null;
    }
    Answer answer = obey(command, sequence);
    lastCommand = command.type().code();
    lastAnswer = answer;
    speech.say(answer);
    if (answer.result() == Result.DONE) {
      afterwards(command, answer.value());
    }
  }

  /** For the others a host that asks again is sent everything again. */
  private static boolean obeyedOnce(MessageType type) {
    return switch (type) {
      case HELLO, QUERY, LIST, FETCH -> false;
      default -> true;
    };
  }

  private Answer obey(LinkMessage command, int sequence) {
    boolean idle = !sampler.running() && sending == null;
    MessageType type = command.type();
    if (!fitted(type)) {
      return new Answer(type.code(), Result.NOT_FITTED.code(), sequence, 0);
    } else if (!idle && wantsIdle(type)) {
      return new Answer(type.code(), Result.NOT_NOW.code(), sequence, 0);
    }
    long value = 0;
    Result result = Result.DONE;
    if (command instanceof Hello hello) {
      result = greet(hello);
    } else if (command instanceof Start start) {
      value = start.rateMilliHz() == 0 ? rateSet : start.rateMilliHz();
      result = value == nearest(value) ? Result.DONE : Result.BAD_VALUE;
    } else if (command instanceof Rate rate) {
      rateSet = nearest(rate.rateMilliHz());
      value = rateSet;
    } else if (command instanceof Place place) {
      value = speech.mark(place.kindCode(), MarkSource.HOST, place.text(), nowNs);
    } else if (command instanceof Time time) {
      clock.setUtc(time.utcMicros(), nowNs);
    } else if (type == MessageType.STOP) {
      stop();
    } else if (type == MessageType.QUERY) {
      speech.status(nowNs);
    } else if (type == MessageType.LIST) {
      value = memory.all().size();
    } else if (command instanceof Fetch fetch) {
      value = memory.toCome(fetch);
      result = value > 0 ? Result.DONE : Result.BAD_VALUE;
    }
    return new Answer(type.code(), result.code(), sequence, result == Result.DONE ? value : 0);
  }

  private boolean fitted(MessageType type) {
    return switch (type) {
      case START, STOP -> identity.can(Ability.START_STOP);
      case RATE -> identity.can(Ability.RATE);
      case TIME -> identity.can(Ability.TIME);
      case PLACE -> identity.can(Ability.PLACE);
      case LIST, FETCH -> identity.can(Ability.STORED);
      default -> true;
    };
  }

  private static boolean wantsIdle(MessageType type) {
    return switch (type) {
      case START, RATE, LIST, FETCH -> true;
      default -> false;
    };
  }

  /** What stands after the answer. */
  private void afterwards(LinkMessage command, long value) {
    if (command instanceof Start start) {
      speech.begin(nowNs);
      sampler.start(value, start.gatherMillis(), nowNs);
    } else if (command.type() == MessageType.LIST) {
      List<StoredRecording> all = memory.all();
      for (int i = 0; i < all.size(); i++) {
        speech.say(all.get(i).entry(i, all.size()));
      }
    } else if (command instanceof Fetch fetch) {
      sending = memory.send(fetch, value);
    }
  }

  private Result greet(Hello hello) {
    if (hello.encodingCode() > Talk.LINES.code()) {
      return Result.BAD_VALUE;
    }
    if (hello.talk() != Talk.KEEP) {
      boolean lines = hello.talk() == Talk.LINES;
      if ((identity.encodings() & (lines ? LINES_BIT : FRAMES_BIT)) == 0) {
        return Result.NOT_FITTED;
      }
      buffer.talk(lines ? Encoding.LINES : Encoding.FRAMES);
    }
    speech.describe();
    speech.status(nowNs);
    return Result.DONE;
  }

  /** A stop that ends a fetch sends one status, as any other. */
  private void stop() {
    if (sampler.running()) {
      sampler.stop();
    }
    sending = null;
    speech.status(nowNs);
  }

  private long nearest(long rate) {
    return Math.max(identity.rateMinMilliHz(), Math.min(identity.rateMaxMilliHz(), rate));
  }
}
