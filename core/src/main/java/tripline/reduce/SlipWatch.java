package tripline.reduce;

import java.util.ArrayList;
import java.util.List;

/**
 * Watches for a reading that jumps within one scan and stays there: a coupling that slipped, a lead
 * that lost contact. A jump is a slip where it is larger than {@value #LEAST_TURNS} handwheel turn
 * plus several times what the speed on either side of it (or a hand's jerk) explains, noise and
 * counts allowed for. A single stray reading is none, nor is a jump over missing samples.
 *
 * <p>Costs a comparison a reading; allocates per slip.
 */
final class SlipWatch {
  /** Slips told; a reading that jumps more often is beyond telling. */
  static final int MOST = 64;

  static final double LEAST_TURNS = 0.1;

  /** How much faster than on either side the reading may have moved within the jump. */
  private static final double SPEED_TIMES = 5;

  /** As fast as a hand can jerk a handwheel between two slow stretches (common practice). */
  private static final double JERK_TURNS_PER_S = 2;

  private static final double NOISE_SIGMAS = 5;
  private static final double COUNTS = 2.5;

  /** Distance to the reading before, in usual ones, from which samples are missing. */
  private static final double GAP = 1.9;

  /** Width of the stretch on either side, ns: the least, and in distances of readings. */
  private static final long LEAST_SIDE_NS = 250_000_000;

  private static final int SIDE_READINGS = 6;

  private final ReadingRing ring;
  private final Rhythm rhythm;
  private final NoiseGauge noise;
  private final double jerk;
  private final double leastMove;
  private final List<ReadingFault> slips = new ArrayList<>();

  private boolean pending;
  private long dueNs = Long.MAX_VALUE;
  private long fromNs;
  private long toNs;
  private long sideNs;
  private double from;
  private double to;
  private double speedBefore;

  SlipWatch(ReadingRing ring, Rhythm rhythm, NoiseGauge noise, double turnsPerUnit) {
    this.ring = ring;
    this.rhythm = rhythm;
    this.noise = noise;
    this.jerk = JERK_TURNS_PER_S / Math.abs(turnsPerUnit);
    this.leastMove = LEAST_TURNS / Math.abs(turnsPerUnit);
  }

  /** A step no wider than this, reading units, is none that is looked at. */
  double leastMove() {
    return leastMove;
  }

  /** When a jump is to be judged, ns; {@link Long#MAX_VALUE} where none is pending. */
  long dueNs() {
    return dueNs;
  }

  /** A step of the reading, before the new reading is in the ring. */
  void onStep(long beforeNs, double before, long nowNs, double now) {
    if (nowNs >= dueNs) {
      judgePending();
    }
    if (Math.abs(now - before) > leastMove) {
      onJump(beforeNs, before, nowNs, now);
    }
  }

  private void onJump(long beforeNs, double before, long nowNs, double now) {
    long usualNs = rhythm.medianNs();
    if (rhythm.total() < 20 || nowNs - beforeNs > GAP * usualNs) {
      return;
    }
    boolean smaller = pending && Math.abs(now - before) <= Math.abs(to - from);
    if (smaller) {
      return;
    }
    pending = true;
    fromNs = beforeNs;
    from = before;
    toNs = nowNs;
    to = now;
    sideNs = Math.max(LEAST_SIDE_NS, SIDE_READINGS * usualNs);
    dueNs = nowNs + sideNs;
    speedBefore = speed(beforeNs - sideNs, beforeNs);
  }

  /** Mean speed over a stretch of the ring, reading units a second. */
  private double speed(long fromNs, long toNs) {
    double low = at(fromNs);
    double high = at(toNs);
    return toNs > fromNs ? (high - low) / ((toNs - fromNs) * 1e-9) : 0;
  }

  /** Reading at a time: of the last run that begins by then, else of the oldest. */
  private double at(long timeNs) {
    long run = Math.min(ring.firstEndingAtOrAfter(timeNs), ring.end() - 1);
    boolean later = run > ring.oldest() && ring.from(run) > timeNs;
    return ring.value(later ? run - 1 : run);
  }

  private void judgePending() {
    if (slips() && slips.size() < MOST) {
      slips.add(fault());
    }
    pending = false;
    dueNs = Long.MAX_VALUE;
  }

  private ReadingFault fault() {
    return new ReadingFault(ReadingFault.Kind.SLIP, fromNs, toNs, to - from);
  }

  /** Whether the pending jump is a slip, by the readings after it. */
  private boolean slips() {
    long middleNs = toNs + sideNs / 2;
    double speedAfter = speed(middleNs, toNs + sideNs);
    double level = at(middleNs) - speedAfter * (middleNs - toNs) * 1e-9;
    double fastest =
        Math.max(jerk, SPEED_TIMES * Math.max(Math.abs(speedBefore), Math.abs(speedAfter)));
    double explained = leastMove + fastest * Math.max(toNs - fromNs, rhythm.scanNs()) * 1e-9;
    double unsure = NOISE_SIGMAS * noise.noiseBesides(to - from) + COUNTS * noise.quantum();
    double sign = Math.signum(to - from);
    return sign * (to - from) > explained + unsure && sign * (level - from) > explained / 2;
  }

  /** The slips so far, as if the recording ended at {@code nowNs}. */
  List<ReadingFault> faults(long nowNs) {
    List<ReadingFault> all = new ArrayList<>(slips);
    if (pending && nowNs >= dueNs && slips() && all.size() < MOST) {
      all.add(fault());
    }
    return all;
  }

  /** Knows what another one knows. */
  void become(SlipWatch other) {
    slips.clear();
    slips.addAll(other.slips);
    pending = other.pending;
    dueNs = other.dueNs;
    fromNs = other.fromNs;
    toNs = other.toNs;
    sideNs = other.sideNs;
    from = other.from;
    to = other.to;
    speedBefore = other.speedBefore;
  }
}
