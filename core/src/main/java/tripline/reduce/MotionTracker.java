package tripline.reduce;

import java.util.ArrayList;
import java.util.List;

/**
 * Cuts the path of the reading into moves and rests. Readings are averaged over short blocks; a
 * rest is a stretch in which the blocks stay within a band, a move ends where a rest begins or
 * where the path turns back by more than the band. Band and shortest rest grow with noise and
 * counts, so that a slow hand on a coarse encoder is not taken for a pause. Allocates per movement,
 * never per reading.
 */
final class MotionTracker {
  /** Width of a block, ns: the least, and the most that noise may stretch it to. */
  private static final long LEAST_BLOCK_NS = 25_000_000;

  private static final long MOST_BLOCK_NS = 100_000_000;

  /** Noise of a block mean that blocks are stretched for, handwheel turns. */
  private static final double WANTED_NOISE_TURNS = 0.001;

  /** Spread that the block means of an hour's rest stay within, in standard deviations. */
  private static final double REST_SIGMAS = 9;

  /** Least band, handwheel turns: below this nobody can feel motion. */
  private static final double LEAST_BAND_TURNS = 0.004;

  /** Shortest rest, s. */
  private static final double LEAST_REST_S = 0.3;

  /**
   * Slowest travel that is to count as moving, handwheel turns per second (a hand that creeps up on
   * a trip point).
   */
  private static final double SLOWEST_TURNS_PER_S = 0.05;

  private static final int BLOCKS = 1 << 8;
  private static final int MASK = BLOCKS - 1;

  private final double turnsPerUnit;
  private final NoiseGauge noise;
  private final RestReadings rests;
  private final Speeds speeds = new Speeds();
  private final List<Movement> movements = new ArrayList<>();

  /** The counts shown by each rest among the movements, in order. */
  private final List<CountTally> tallies = new ArrayList<>();

  private final long[] blockFrom = new long[BLOCKS];
  private final long[] blockTo = new long[BLOCKS];
  private final double[] blockMean = new double[BLOCKS];
  private final int[] blockCount = new int[BLOCKS];
  private long blocks;

  private double noiseNow;

  /** Widest spread of block means that still counts as standing still, reading units. */
  private double band;

  private long blockNs = LEAST_BLOCK_NS;
  private long openFrom;
  private long openTo;
  private long openUntil = Long.MIN_VALUE;
  private double openSum;
  private double openOrigin;
  private int openCount;

  private State state = State.UNDECIDED;
  private long beginNs;
  private double beginReading;
  private int sign;
  private double extreme;
  private long extremeNs;
  private double low;
  private double high;
  private StopProbe stopProbe = (from, to, restNs, rest, restU, direction) -> Stopping.NONE;

  private enum State {
    UNDECIDED,
    RESTING,
    MOVING
  }

  /** Looks closer at how a move came to rest. */
  interface StopProbe {
    Stopping look(
        long moveFromNs, long nowNs, long restFromNs, double rest, double restU, int sign);
  }

  MotionTracker(double turnsPerUnit, NoiseGauge noise, ReadingRing ring) {
    this.turnsPerUnit = Math.abs(turnsPerUnit);
    this.rests = new RestReadings(ring, noise);
    this.band = LEAST_BAND_TURNS / this.turnsPerUnit;
    this.noise = noise;
  }

  void probe(StopProbe probe) {
    this.stopProbe = probe;
  }

  /** A reading at a time. Hot: closes a block some forty times a second, else adds. */
  void onReading(long timeNs, double reading) {
    if (timeNs >= openUntil) {
      openBlock(timeNs, reading);
    }
    openTo = timeNs;
    openSum += reading - openOrigin;
    openCount++;
  }

  /** Until when readings are only added up, ns. */
  long openUntilNs() {
    return openUntil;
  }

  /** {@link #onReading} of each; only the last may open a block. */
  void add(QuietRows rows) {
    final double[] readings = rows.readings();
    final int last = rows.end() - 1;
    final double origin = openOrigin;
    double sum = openSum;
    for (int row = rows.from(); row < last; row++) {
      sum += readings[row] - origin;
    }
    openSum = sum;
    openCount += last - rows.from();
    openTo = last > rows.from() ? rows.times()[last - 1] : openTo;
    onReading(rows.lastNs(), rows.last());
  }

  private void openBlock(long timeNs, double reading) {
    if (openCount > 0) {
      closeBlock();
    }
    openFrom = timeNs;
    openUntil = timeNs + blockNs;
    openOrigin = reading;
    openSum = 0;
  }

  private void closeBlock() {
    int at = (int) blocks & MASK;
    blockFrom[at] = openFrom;
    blockTo[at] = openTo;
    blockMean[at] = openOrigin + openSum / openCount;
    blockCount[at] = openCount;
    blocks++;
    measure(openCount);
    stretchBlocks(at);
    openCount = 0;
    onBlock(at);
  }

  private void stretchBlocks(int at) {
    double wanted = noiseNow * turnsPerUnit / WANTED_NOISE_TURNS;
    double interval = (double) (blockTo[at] - blockFrom[at]) / Math.max(1, openCount - 1);
    long width = (long) Math.min(MOST_BLOCK_NS, wanted * wanted * interval);
    blockNs = Math.max(LEAST_BLOCK_NS, width);
  }

  /** Looks at the noise anew; some square roots, so once a block. */
  private void measure(int readings) {
    noise.onBlock(readings);
    noiseNow = noise.noise();
    double block = noiseNow / Math.sqrt(Math.max(1, noise.usualCount()));
    band =
        Math.max(
            Math.max(1.5 * noise.quantum(), REST_SIGMAS * block), LEAST_BAND_TURNS / turnsPerUnit);
  }

  /** Widest spread of block means that still counts as standing still, reading units. */
  double band() {
    return band;
  }

  long leastRestNs() {
    double slow = band * turnsPerUnit / SLOWEST_TURNS_PER_S;
    return (long) (1e9 * Math.max(LEAST_REST_S, Math.min(slow, 2.0)));
  }

  private void onBlock(int at) {
    double mean = blockMean[at];
    switch (state) {
      case UNDECIDED -> undecided(at, mean);
      case RESTING -> resting(at, mean);
      case MOVING -> moving(at, mean);
    }
  }

  private void undecided(int at, double mean) {
    if (blocks == 1) {
      beginNs = blockFrom[at];
      beginReading = mean;
      low = mean;
      high = mean;
      return;
    }
    low = Math.min(low, mean);
    high = Math.max(high, mean);
    if (high - low > band) {
      startMove(beginNs, beginReading, mean > beginReading ? 1 : -1, at);
    } else if (blockTo[at] - beginNs >= leastRestNs()) {
      startRest(beginNs);
    }
  }

  private void startMove(long fromNs, double from, int direction, int at) {
    state = State.MOVING;
    beginNs = fromNs;
    beginReading = from;
    sign = direction;
    extreme = blockMean[at];
    extremeNs = blockMid(at);
    speeds.begin(fromNs, from);
  }

  private void moving(int at, double mean) {
    speeds.onBlock(blockMid(at), mean);
    if (sign * (mean - extreme) > 0) {
      extreme = mean;
      extremeNs = blockMid(at);
    }
    if (sign * (extreme - mean) > band) {
      movements.add(
          new Movement.Move(
              beginNs, extremeNs, beginReading, extreme, sign, speeds.run(), Stopping.NONE));
      startMove(extremeNs, extreme, -sign, at);
      return;
    }
    long restFrom = stillSince();
    if (restFrom >= 0 && blockTo[at] - restFrom >= leastRestNs()) {
      double rest = mean(restFrom);
      if (resumesRest(rest)) {
        Movement.Rest before = (Movement.Rest) movements.remove(movements.size() - 1);
        tallies.remove(tallies.size() - 1);
        startRest(restFrom);
        beginNs = before.fromNs();
        return;
      }
      endMove(restFrom, blockTo[at]);
    }
  }

  private void endMove(long restFromNs, long nowNs) {
    long moveFrom = beginNs;
    double from = beginReading;
    startRest(restFromNs);
    double rest = rests.mean();
    double creep = rest - mean(nowNs - (nowNs - restFromNs) / 3);
    double restU = Math.hypot(rests.u(), creep);
    double overshoot = Math.max(0, sign * (extreme - rest) - band / 2);
    Stopping stop = stopProbe.look(moveFrom, nowNs, restFromNs, rest, restU, sign);
    movements.add(
        new Movement.Move(
            moveFrom, restFromNs, from, rest, sign, speeds.run(), withOvershoot(stop, overshoot)));
  }

  /** A stir that ended where it began was no move. */
  private boolean resumesRest(double rest) {
    return !movements.isEmpty()
        && movements.get(movements.size() - 1) instanceof Movement.Rest before
        && before.toNs() == beginNs
        && Math.abs(rest - before.reading()) < band
        && Math.abs(extreme - before.reading()) < 2 * band;
  }

  private static Stopping withOvershoot(Stopping s, double overshoot) {
    return new Stopping(
        s.onsetNs(),
        s.onsetUNs(),
        s.onsetReading(),
        s.onsetU(),
        s.stillNs(),
        s.stillUNs(),
        s.stillReading(),
        s.stillU(),
        overshoot);
  }

  /**
   * Begin of the longest stretch up to now whose blocks stay within the band, or -1 if it is a
   * single block.
   */
  private long stillSince() {
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    long since = -1;
    long oldest = Math.max(0, blocks - BLOCKS);
    for (long b = blocks - 1; b >= oldest; b--) {
      int at = (int) b & MASK;
      if (blockTo[at] <= beginNs) {
        break;
      }
      lowest = Math.min(lowest, blockMean[at]);
      highest = Math.max(highest, blockMean[at]);
      if (highest - lowest > band) {
        break;
      }
      since = blockFrom[at];
    }
    return since;
  }

  private double mean(long sinceNs) {
    double sum = 0;
    long count = 0;
    double origin = blockMean[(int) (blocks - 1) & MASK];
    for (long b = blocks - 1; b >= Math.max(0, blocks - BLOCKS); b--) {
      int at = (int) b & MASK;
      if (blockFrom[at] < sinceNs) {
        break;
      }
      sum += (blockMean[at] - origin) * blockCount[at];
      count += blockCount[at];
    }
    return origin + sum / Math.max(1, count);
  }

  /**
   * Takes the blocks since a time as a rest, leaving out its first third while that is still
   * settling.
   */
  private void startRest(long fromNs) {
    state = State.RESTING;
    beginNs = fromNs;
    strayed = false;
    pending = -1;
    low = blockMean[(int) (blocks - 1) & MASK];
    high = low;
    rests.begin(low);
    long nowNs = blockTo[(int) (blocks - 1) & MASK];
    long settledNs = fromNs + (nowNs - fromNs) / 3;
    for (long b = Math.max(0, blocks - BLOCKS); b < blocks; b++) {
      int at = (int) b & MASK;
      if (blockFrom[at] >= fromNs) {
        low = Math.min(low, blockMean[at]);
        high = Math.max(high, blockMean[at]);
      }
      if (blockFrom[at] >= settledNs) {
        addToRest(at);
      }
    }
  }

  private void addToRest(int at) {
    rests.add(blockFrom[at], blockTo[at], blockMean[at], blockCount[at]);
  }

  /**
   * Whether the reading shows noise of a count or more at rest: what an encoder that dithers on an
   * edge cannot.
   */
  boolean noisyAtRest() {
    return rests.noisy();
  }

  private void resting(int at, double mean) {
    double off = Math.abs(mean - rests.mean());
    if (off <= band / 2 || (off <= band && !strayed)) {
      strayed = off > band / 2;
      low = Math.min(low, mean);
      high = Math.max(high, mean);
      if (pending >= 0) {
        addToRest(pending);
      }
      pending = at;
      return;
    }
    // The block before may already have been on its way: it was never added to the rest's mean.
    long leftNs = pending >= 0 ? blockFrom[pending] : blockFrom[at];
    pending = -1;
    strayed = false;
    Movement.Rest rest = rest(leftNs);
    movements.add(rest);
    tallies.add(rests.tally());
    startMove(leftNs, rest.reading(), mean > rest.reading() ? 1 : -1, at);
  }

  /** The block before was off by more than half a band: noise once, motion if it happens again. */
  private boolean strayed;

  private int pending = -1;

  private Movement.Rest rest(long toNs) {
    return new Movement.Rest(beginNs, toNs, rests.mean(), rests.u(), low, high, rests.grain());
  }

  private long blockMid(int at) {
    return blockFrom[at] + (blockTo[at] - blockFrom[at]) / 2;
  }

  /** Movements so far and the one under way, as if the recording ended now. */
  List<Movement> finish(long endNs) {
    List<CountTally> shown = new ArrayList<>(tallies);
    shown.add(state == State.RESTING ? rests.tally() : new CountTally());
    return CountDither.placed(movements(endNs), shown, noise.quantum());
  }

  private List<Movement> movements(long endNs) {
    List<Movement> all = new ArrayList<>(movements);
    if (openCount > 0 && blocks == 0) {
      all.add(
          new Movement.Rest(
              openFrom,
              endNs,
              openOrigin + openSum / openCount,
              rests.u(),
              openOrigin,
              openOrigin,
              rests.grain()));
      return all;
    }
    double last =
        openCount > 0
            ? openOrigin + openSum / openCount
            : blocks > 0 ? blockMean[(int) (blocks - 1) & MASK] : Double.NaN;
    switch (state) {
      case RESTING -> all.add(rest(endNs));
      case MOVING ->
          all.add(
              new Movement.Move(
                  beginNs, endNs, beginReading, last, sign, speeds.run(), Stopping.NONE));
      case UNDECIDED -> {
        if (blocks > 0) {
          all.add(
              new Movement.Rest(
                  beginNs,
                  endNs,
                  (low + high) / 2,
                  Math.max(rests.u(), (high - low) / Math.sqrt(12)),
                  low,
                  high,
                  rests.grain()));
        }
      }
    }
    return all;
  }

  /** Stands where another one stands. */
  void become(MotionTracker other) {
    speeds.become(other.speeds);
    movements.clear();
    movements.addAll(other.movements);
    tallies.clear();
    tallies.addAll(other.tallies);
    System.arraycopy(other.blockFrom, 0, blockFrom, 0, BLOCKS);
    System.arraycopy(other.blockTo, 0, blockTo, 0, BLOCKS);
    System.arraycopy(other.blockMean, 0, blockMean, 0, BLOCKS);
    System.arraycopy(other.blockCount, 0, blockCount, 0, BLOCKS);
    blocks = other.blocks;
    noiseNow = other.noiseNow;
    band = other.band;
    blockNs = other.blockNs;
    openFrom = other.openFrom;
    openTo = other.openTo;
    openUntil = other.openUntil;
    openSum = other.openSum;
    openOrigin = other.openOrigin;
    openCount = other.openCount;
    state = other.state;
    beginNs = other.beginNs;
    beginReading = other.beginReading;
    sign = other.sign;
    extreme = other.extreme;
    extremeNs = other.extremeNs;
    low = other.low;
    high = other.high;
    rests.become(other.rests);
    strayed = other.strayed;
    pending = other.pending;
  }
}
