package tripline.harness.rehearse.logger;

import java.util.List;
import java.util.function.Supplier;
import tripline.link.MarkKind;
import tripline.link.MarkSource;

/** The logger: told the time, handed bytes, asked for bytes. */
public final class VirtualLogger {
  private final LoggerMake make;
  private final Inputs inputs;
  private final Memory memory;
  private long session;
  private LoggerClock clock;
  private TransmitBuffer buffer;
  private Sampler sampler;
  private Obedience obedience;
  private long nowNs;

  /**
   * Switched on.
   *
   * @param memory its stored recordings, asked for once
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
    this.memory = new Memory(memory);
    this.nowNs = nowNs;
    session = make.identity().session();
    clock = new LoggerClock(make.identity().clockBits(), upSinceNs);
    buffer = new TransmitBuffer(make.talks());
    sampler = new Sampler(make, inputs, clock, buffer);
    obedience = new Obedience(make, session, this.memory, clock, buffer, sampler);
    lineOpened();
  }

  /** Loses its power and comes back at once: a new session, a new clock, everything forgotten. */
  public void restart(long atNs) {
    nowNs = atNs;
    session = (session + 1) & 0xffff_ffffL;
    clock = new LoggerClock(make.identity().clockBits(), atNs);
    buffer = new TransmitBuffer(make.talks());
    sampler = new Sampler(make, inputs, clock, buffer);
    obedience = new Obedience(make, session, memory, clock, buffer, sampler);
    lineOpened();
  }

  /** Its end of the line has been opened (SPEC L1). */
  public void lineOpened() {
    buffer.delimiter();
    obedience.speech().describe();
    obedience.speech().status(nowNs);
  }

  /** Takes bytes from the host, now. */
  public void receive(byte[] bytes, int from, int length) {
    obedience.hear(bytes, from, length, nowNs);
  }

  /** A step of the rig has ended. */
  public void advance(long atNs) {
    nowNs = atNs;
    if (sampler.running()) {
      sampler.advance(atNs);
      obedience.speech().statusIfDue(atNs);
    }
    obedience.goOn(atNs);
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

  /** Makes its stored recordings now, which takes a moment, rather than when it is asked. */
  public void remember() {
    memory.all();
  }

  /** Somebody presses its button. */
  public void press(MarkKind kind, String text) {
    obedience.speech().mark(kind.code(), MarkSource.BUTTON, text, nowNs);
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
}
