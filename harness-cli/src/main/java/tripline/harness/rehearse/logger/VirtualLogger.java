package tripline.harness.rehearse.logger;

import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import tripline.link.Ability;
import tripline.link.Answer;
import tripline.link.BodySink;
import tripline.link.Encoding;
import tripline.link.Fetch;
import tripline.link.Hello;
import tripline.link.Identity;
import tripline.link.LinkMessage;
import tripline.link.LoggerState;
import tripline.link.MarkKind;
import tripline.link.MarkMessage;
import tripline.link.MarkSource;
import tripline.link.MessageType;
import tripline.link.Place;
import tripline.link.Rate;
import tripline.link.Result;
import tripline.link.Start;
import tripline.link.Status;
import tripline.link.Talk;
import tripline.link.Time;
import tripline.link.UtcSource;

/**
 * The logger: told the time, handed bytes, asked for bytes. Longer than other classes: every
 * command is here, beside the states it is obeyed in.
 */
public final class VirtualLogger {
  /** Well below the second of SPEC L8. */
  private static final long STATUS_NS = 900_000_000L;

  /** Used until the host sets one: 1 kHz. */
  private static final long USUAL_RATE = 1_000_000;

  private static final int FRAMES_BIT = 1;
  private static final int LINES_BIT = 2;

  private final LoggerMake make;
  private final Inputs inputs;
  private final Supplier<List<StoredRecording>> memory;
  private @Nullable List<StoredRecording> recordings;
  private long session;
  private LoggerClock clock;
  private TransmitBuffer buffer;
  private Sampler sampler;
  private CommandEar ear;
  private @Nullable Sending sending;
  private long rateSet;
  private int marks;
  private long statusDueNs;
  private long nowNs;

  /** The command answered last, for a host that asks again (SPEC §6). */
  private int lastCommand = -1;

  private @Nullable Answer lastAnswer;

  /**
   * Switched on.
   *
   * @param memory its stored recordings, asked for once and only when the host wants them
   * @param upSinceNs when its clock read 0, rig time
   * @param nowNs rig time
   */
  public VirtualLogger(
      LoggerMake make,
      Inputs inputs,
      Supplier<List<StoredRecording>> memory,
      long upSinceNs,
      long nowNs) {
    this.make = make;
    this.inputs = inputs;
    this.memory = memory;
    session = make.identity().session();
    clock = new LoggerClock(make.identity().clockBits(), upSinceNs);
    buffer = new TransmitBuffer(make.talks());
    sampler = new Sampler(make, inputs, clock, buffer);
    ear = ear();
    powerUp(nowNs);
  }

  private CommandEar ear() {
    return new CommandEar(
        new CommandEar.Listener() {
          @Override
          public void onCommand(LinkMessage command, int sequence) {
            hear(command, sequence);
          }

          @Override
          public void onRefused(BodySink.Cause why, int commandCode, int sequence) {
            Result result = why == BodySink.Cause.MALFORMED ? Result.BAD_VALUE : Result.NOT_KNOWN;
            say(new Answer(commandCode, result.code(), sequence, 0));
          }
        });
  }

  private void powerUp(long atNs) {
    nowNs = atNs;
    rateSet = Math.min(USUAL_RATE, make.identity().rateMaxMilliHz());
    marks = 0;
    lineOpened();
  }

  /** Its end of the line has been opened (SPEC L1). */
  public void lineOpened() {
    buffer.delimiter();
    describe();
    status();
  }

  /** Loses its power and comes back at once: a new session, a new clock, everything forgotten. */
  public void restart(long atNs) {
    session = (session + 1) & 0xffff_ffffL;
    clock = new LoggerClock(make.identity().clockBits(), atNs);
    buffer = new TransmitBuffer(make.talks());
    sampler = new Sampler(make, inputs, clock, buffer);
    ear = ear();
    sending = null;
    lastCommand = -1;
    lastAnswer = null;
    powerUp(atNs);
  }

  /** Takes bytes from the host, now. */
  public void receive(byte[] bytes, int from, int length) {
    ear.hear(bytes, from, length);
  }

  /** A step of the rig has ended. */
  public void advance(long atNs) {
    nowNs = atNs;
    if (sampler.running()) {
      sampler.advance(atNs);
      if (atNs >= statusDueNs) {
        status();
      }
    }
    if (sending != null && sending.go(buffer)) {
      sending = null;
      status();
    }
  }

  /** Moves bytes for the host out of it, at most so many; returns how many. */
  public int take(byte[] into, int most) {
    return buffer.take(into, most);
  }

  /** Whether it samples. */
  public boolean running() {
    return sampler.running();
  }

  /** Sampling instants since the last start. */
  public long samples() {
    return sampler.samples();
  }

  /** What it is. */
  public LoggerMake make() {
    return make;
  }

  /** Somebody presses its button. */
  public void press(MarkKind kind, String text) {
    mark(kind.code(), MarkSource.BUTTON, text);
  }

  /** A fault: its clock steps. */
  public void stepClock(long byNs) {
    clock.step(byNs);
  }

  /** A fault: the next so many rows are not taken in time, and it says so. */
  public void overrun(int rows) {
    sampler.overrun(rows);
  }

  /** A fault of the line: the next so many messages vanish. */
  public void lose(int messages) {
    buffer.lose(messages);
  }

  private void hear(LinkMessage command, int sequence) {
    boolean again =
        lastAnswer != null && lastCommand == command.type().code() && lastAnswer.to() == sequence;
    Answer answer;
    if (again && lastAnswer != null && obeyedOnce(command.type())) {
      answer = lastAnswer;
    } else {
      if (again && command instanceof Fetch) {
        sending = null;
      }
      answer = obey(command, sequence);
    }
    lastCommand = command.type().code();
    lastAnswer = answer;
    say(answer);
    if (answer.result() == Result.DONE) {
      afterwards(command, answer, again && obeyedOnce(command.type()));
    }
  }

  /** For the others the host is sent everything again. */
  private static boolean obeyedOnce(MessageType type) {
    return switch (type) {
      case HELLO, QUERY, LIST, FETCH -> false;
      default -> true;
    };
  }

  private Answer obey(LinkMessage command, int sequence) {
    boolean idle = !sampler.running() && sending == null;
    Result refused =
        !fitted(command.type())
            ? Result.NOT_FITTED
            : !idle && wantsIdle(command.type()) ? Result.NOT_NOW : null;
    long value = 0;
    Result result = Result.DONE;
    if (refused != null) {
      result = refused;
    } else if (command instanceof Hello hello) {
      result = greet(hello);
    } else if (command instanceof Start start) {
      value = start.rateMilliHz() == 0 ? rateSet : start.rateMilliHz();
      result = inRange(value) ? Result.DONE : Result.BAD_VALUE;
    } else if (command instanceof Rate rate) {
      rateSet = Math.max(least(), Math.min(most(), rate.rateMilliHz()));
      value = rateSet;
    } else if (command instanceof Place place) {
      value = mark(place.kindCode(), MarkSource.HOST, place.text());
    } else if (command instanceof Time time) {
      clock.setUtc(time.utcMicros(), nowNs);
    } else if (command.type() == MessageType.STOP) {
      stop();
    } else if (command.type() == MessageType.QUERY) {
      status();
    } else if (command.type() == MessageType.LIST) {
      value = recordings().size();
    } else if (command instanceof Fetch fetch) {
      value = toCome(fetch);
      result = value > 0 ? Result.DONE : Result.BAD_VALUE;
    }
    return new Answer(
        command.type().code(), result.code(), sequence, result == Result.DONE ? value : 0);
  }

  private boolean fitted(MessageType type) {
    return switch (type) {
      case START, STOP -> can(Ability.START_STOP);
      case RATE -> can(Ability.RATE);
      case TIME -> can(Ability.TIME);
      case PLACE -> can(Ability.PLACE);
      case LIST, FETCH -> can(Ability.STORED);
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
  private void afterwards(LinkMessage command, Answer answer, boolean saidBefore) {
    if (saidBefore) {
      return;
    }
    if (command instanceof Start start) {
      marks = 0;
      sampler.start(answer.value(), start.gatherMillis(), nowNs);
      statusDueNs = nowNs + STATUS_NS;
    } else if (command.type() == MessageType.LIST) {
      List<StoredRecording> all = recordings();
      for (int i = 0; i < all.size(); i++) {
        buffer.send(all.get(i).entry(i, all.size()));
      }
    } else if (command instanceof Fetch fetch) {
      int from = (int) fetch.offset();
      sending = new Sending(recording(fetch), from, from + (int) answer.value());
    }
  }

  private Result greet(Hello hello) {
    if (hello.encodingCode() > Talk.LINES.code()) {
      return Result.BAD_VALUE;
    }
    if (hello.talk() != Talk.KEEP) {
      boolean lines = hello.talk() == Talk.LINES;
      if ((make.identity().encodings() & (lines ? LINES_BIT : FRAMES_BIT)) == 0) {
        return Result.NOT_FITTED;
      }
      buffer.talk(lines ? Encoding.LINES : Encoding.FRAMES);
    }
    describe();
    status();
    return Result.DONE;
  }

  /** A stop that ends a fetch sends one status, as any other. */
  private void stop() {
    if (sampler.running()) {
      sampler.stop();
    }
    sending = null;
    status();
  }

  private boolean can(Ability ability) {
    return make.identity().can(ability);
  }

  private boolean inRange(long rate) {
    return rate >= least() && rate <= most();
  }

  private long least() {
    return make.identity().rateMinMilliHz();
  }

  private long most() {
    return make.identity().rateMaxMilliHz();
  }

  private List<StoredRecording> recordings() {
    if (recordings == null) {
      recordings = memory.get();
    }
    return recordings;
  }

  private @Nullable StoredRecording find(long id) {
    return recordings().stream().filter(r -> r.id() == id).findFirst().orElse(null);
  }

  private StoredRecording recording(Fetch fetch) {
    StoredRecording found = find(fetch.id());
    if (found == null) {
      throw new IllegalStateException("no recording " + fetch.id());
    }
    return found;
  }

  /** Bytes that a fetch will bring; 0: there is nothing there. */
  private long toCome(Fetch fetch) {
    StoredRecording found = find(fetch.id());
    if (found == null || fetch.offset() >= found.length()) {
      return 0;
    }
    long rest = found.length() - fetch.offset();
    return fetch.length() == 0 ? rest : Math.min(rest, fetch.length());
  }

  private void describe() {
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

  private void status() {
    LoggerState state =
        sampler.running()
            ? LoggerState.RUNNING
            : sending != null ? LoggerState.SENDING : LoggerState.IDLE;
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
            sampler.samples() & 0xffff_ffffL,
            sampler.samplesLost(),
            0,
            buffer.dropped(),
            ear.bad()));
    statusDueNs = nowNs + STATUS_NS;
  }

  private int mark(int kind, MarkSource source, String text) {
    int number = marks;
    say(new MarkMessage(kind, source.code(), number, clock.stamp(nowNs), text));
    marks = (marks + 1) & 0xffff;
    return number;
  }

  private void say(LinkMessage message) {
    buffer.send(message);
  }
}
