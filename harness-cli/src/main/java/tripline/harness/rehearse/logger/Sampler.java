package tripline.harness.rehearse.logger;

import tripline.link.LossCause;
import tripline.link.SampleBlock;

/**
 * Takes rows at the sampling instants, gathers them into blocks, and accounts for those it has to
 * leave out (SPEC L6, L7, L9, L12).
 */
final class Sampler {
  /** Where the host asks for no time of its own (SPEC §6). */
  private static final long USUAL_GATHER_NS = 20_000_000;

  private static final long MILLI_HZ_NS = 1_000_000_000_000L;
  private static final long NS_A_MILLI = 1_000_000;

  private final LoggerMake make;
  private final Inputs inputs;
  private final LoggerClock clock;
  private final TransmitBuffer buffer;
  private final EdgeCatcher edges;
  private final LossLog losses;
  private final SampleBlock block = new SampleBlock();
  private final long positions;
  private final long contactMask;

  private long rateMilliHz;
  private long periodNs;
  private long gatherNs;
  private long startNs;
  private long number;
  private long blockFirstNs;
  private boolean gathering;
  private int toOverrun;

  Sampler(LoggerMake make, Inputs inputs, LoggerClock clock, TransmitBuffer buffer) {
    this.make = make;
    this.inputs = inputs;
    this.clock = clock;
    this.buffer = buffer;
    edges = new EdgeCatcher(make, inputs, clock, buffer);
    losses = new LossLog(clock, buffer);
    positions = make.identity().positions();
    int contacts = make.identity().contacts();
    contactMask = contacts == Long.SIZE ? -1 : (1L << contacts) - 1;
  }

  /** Whether it samples. */
  boolean running() {
    return rateMilliHz > 0;
  }

  /** Thousandths of a hertz; 0 unless running. */
  long rateMilliHz() {
    return rateMilliHz;
  }

  /** Sampling instants since start. */
  long samples() {
    return number;
  }

  /** Of these, lost. */
  long samplesLost() {
    return losses.samples();
  }

  void start(long rate, int gatherMillis, long nowNs) {
    rateMilliHz = rate;
    periodNs = (MILLI_HZ_NS + rate / 2) / rate;
    gatherNs = gatherMillis == 0 ? USUAL_GATHER_NS : gatherMillis * NS_A_MILLI;
    startNs = nowNs;
    number = 0;
    gathering = false;
    losses.restart();
    edges.restart();
  }

  /** Sends everything sampled so far, and samples no more. */
  void stop() {
    flush();
    losses.announce();
    rateMilliHz = 0;
  }

  /** A fault: the next so many rows are not taken in time. */
  void overrun(int rows) {
    toOverrun += rows;
  }

  /** A step of the rig has ended. */
  void advance(long nowNs) {
    int edge = 0;
    for (long at = instantNs(); at <= nowNs; at = instantNs()) {
      edge = edges.catchUpTo(at, edge);
      take(at);
    }
    edges.catchUpTo(nowNs, edge);
    edges.sendIfDue(nowNs);
    if (gathering && nowNs + Math.max(periodNs, NS_A_MILLI) - blockFirstNs >= gatherNs) {
      flush();
    }
  }

  /** Split so that nothing overflows: the whole seconds, then the rest. */
  private long instantNs() {
    return startNs
        + number / rateMilliHz * MILLI_HZ_NS
        + number % rateMilliHz * MILLI_HZ_NS / rateMilliHz;
  }

  private void take(long atNs) {
    if (toOverrun > 0) {
      toOverrun--;
      losses.add(LossCause.OVERRUN, number, atNs);
    } else if (buffer.crowded()) {
      losses.add(LossCause.QUEUE, number, atNs);
    } else {
      row(atNs);
    }
    number++;
  }

  private void row(long atNs) {
    if (losses.pending()) {
      flush();
      losses.announce();
    }
    boolean first = number == 0;
    long known = first ? contactMask : make.sampled();
    long levels = (inputs.closedAt(atNs) ^ make.closedLow()) & contactMask;
    int count = positions > 0 ? inputs.countAt(atNs) : 0;
    if (!gathering || !add(count, levels)) {
      flush();
      block.begin(number, clock.stamp(atNs), periodNs, known);
      blockFirstNs = atNs;
      gathering = true;
      add(count, levels);
    }
    if (first && make.sampled() != contactMask) {
      flush();
    }
  }

  private boolean add(int count, long levels) {
    return positions > 0 ? block.add(count, levels, 0) : block.addWithoutReading(levels, 0);
  }

  /** Edges first: those of a block's time stand before it (SPEC L10). */
  private void flush() {
    edges.send();
    if (gathering) {
      buffer.send(block);
      gathering = false;
    }
  }
}
