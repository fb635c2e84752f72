package tripline.reduce;

import java.util.ArrayList;
import java.util.List;

/**
 * The position readings of a recording as they stream by: unwrapped, kept for a while, followed
 * into moves and rests, and watched for what is wrong with them.
 */
final class PositionTrack {
  /** Below this a silence says nothing worth having, ns. */
  private static final long SHORT_SILENCE_NS = 2_000_000;

  /** A logger that writes only changes repeats a reading less often than once in so many. */
  private static final int CHANGES_ONLY_SHARE = 50;

  /** Furthest step, in counts, across which a silence is taken for a reading that held. */
  private static final double HELD_COUNTS = 3.5;

  /** Scans that a count is taken to last at least where a reading goes count by count. */
  private static final int SCANS_A_COUNT = 16;

  private static final int MOST_HELD_READINGS = 1 << 20;

  private final Rhythm rows;
  private final Rhythm rhythm = new Rhythm();
  private final Unwrapper unwrapper;
  private final NoiseGauge noise;
  private final ReadingRing ring = new ReadingRing();
  private final MotionTracker motion;
  private final OutlineThinner outline = new OutlineThinner();
  private final GapLog gaps;
  private final SlipWatch slips;
  private final FreezeWatch freezes;

  private long count;
  private long repeats;
  private long steps;
  private long singleSteps;
  private long lastNs;
  private long heldSinceNs;
  private double last = Double.NaN;

  /**
   * @param rows rhythm of the rows
   */
  PositionTrack(ReductionSettings settings, Rhythm rows) {
    this.rows = rows;
    this.unwrapper = new Unwrapper(settings.modulus().orElse(Double.NaN));
    this.noise = new NoiseGauge(settings.quantum());
    this.motion = new MotionTracker(settings.turnsPerUnit(), noise, ring);
    this.gaps = new GapLog(rhythm, Loss.What.POSITION, noise, () -> !writesChangesOnly());
    this.slips = new SlipWatch(ring, rhythm, noise, settings.turnsPerUnit());
    this.freezes = new FreezeWatch(ring, settings.turnsPerUnit());
    motion.probe(new StoppingFit(ring, noise));
  }

  /** Undoes the wrap of a batch's readings, in place. */
  void unwrap(RowBatch rows) {
    unwrapper.unwrap(rows.reading, rows.size());
  }

  /** When something is next due that a quiet reading may bring about, ns. */
  long dueNs() {
    return Math.min(motion.openUntilNs(), outline.nextNs());
  }

  /** From when on no reading is quiet, ns. */
  long quietUntilNs() {
    return Math.min(slips.dueNs(), heldSinceNs + FreezeWatch.LEAST_NS);
  }

  /** Longest distance of a quiet reading from the one before, ns; 0 where none may be quiet. */
  long longestQuietNs() {
    boolean silenceTells = repeats * CHANGES_ONLY_SHARE < count + RowBatch.CAPACITY;
    return Math.min(gaps.longestUsualNs(), silenceTells ? SHORT_SILENCE_NS : Long.MAX_VALUE);
  }

  /** Widest step of a quiet reading from the one before, reading units. */
  double widestQuietStep() {
    return slips.leastMove();
  }

  /** Readings that are quiet: {@link #onReading} of each; only the last may be due for anything. */
  void takeQuiet(QuietRows rows) {
    rows.addTo(rhythm, lastNs);
    long runs = ring.end();
    ring.add(rows);
    repeats += rows.rows() - (ring.end() - runs);
    heldSinceNs = ring.from(ring.end() - 1);
    last = rows.last();
    lastNs = rows.lastNs();
    count += rows.rows();
    noise.add(rows);
    motion.add(rows);
    outline.onReading(lastNs, last);
  }

  /**
   * A reading.
   *
   * @param reading unwrapped; not NaN
   */
  void onReading(long timeNs, double reading) {
    if (count > 0) {
      onNext(timeNs, reading);
    } else {
      heldSinceNs = timeNs;
      ring.add(timeNs, reading);
    }
    count++;
    lastNs = timeNs;
    last = reading;
    noise.onReading(timeNs, reading);
    motion.onReading(timeNs, reading);
    outline.onReading(timeNs, reading);
  }

  private void onNext(long timeNs, double reading) {
    long distanceNs = timeNs - lastNs;
    if (distanceNs > 0) {
      rhythm.add(distanceNs);
      gaps.onDistance(lastNs, timeNs, last, reading);
    }
    if (reading == last) {
      repeats++;
      ring.repeat(timeNs);
    } else {
      onStep(timeNs, reading, distanceNs);
      ring.add(timeNs, reading);
    }
  }

  private void onStep(long timeNs, double reading, long distanceNs) {
    if (lastNs - heldSinceNs >= FreezeWatch.LEAST_NS) {
      freezes.onHeld(reading - last);
    }
    heldSinceNs = timeNs;
    slips.onStep(lastNs, last, timeNs, reading);
    if (distanceNs > SHORT_SILENCE_NS && writesChangesOnly()) {
      holdOverSilence(timeNs, reading);
    }
  }

  /** What need not be done with every reading. */
  void doChores() {
    gaps.learn();
  }

  private boolean writesChangesOnly() {
    return count >= 10 && repeats * CHANGES_ONLY_SHARE < count;
  }

  /**
   * A logger that writes only changes says by its silence that the reading held until just before
   * the next one: one scan before it. Where the reading goes count by count, its distances do not
   * tell the scan, only that it is much shorter.
   */
  private void holdOverSilence(long timeNs, double reading) {
    double step = Math.abs(reading - last);
    double quantum = noise.quantum();
    long distanceNs = timeNs - lastNs;
    steps++;
    singleSteps += step < 1.5 * quantum ? 1 : 0;
    boolean countByCount = step < 1.5 * quantum && singleSteps * 10 > steps * 9;
    long scanNs = rows.scanNs();
    long shortNs = countByCount ? Math.min(scanNs, distanceNs / SCANS_A_COUNT) : scanNs;
    long untilNs = timeNs - shortNs;
    boolean silent = shortNs > 0 && untilNs - lastNs >= shortNs / 2;
    if (silent && step <= HELD_COUNTS * quantum) {
      ring.hold(untilNs, (int) Math.min(MOST_HELD_READINGS, (untilNs - lastNs) / shortNs));
      motion.onReading(untilNs, last);
      outline.onReading(untilNs, last);
    }
  }

  /** How many readings. */
  long count() {
    return count;
  }

  /** How many repeated the reading before. */
  long repeats() {
    return repeats;
  }

  /** Time of the last reading, ns; 0 before the first. */
  long lastNs() {
    return lastNs;
  }

  /** The last reading; NaN before the first. */
  double last() {
    return last;
  }

  ReadingRing ring() {
    return ring;
  }

  NoiseGauge noise() {
    return noise;
  }

  Outline outline() {
    return outline.outline(lastNs, last);
  }

  /** Moves and rests, as if the recording ended at {@code endNs}. */
  List<Movement> movements(long endNs) {
    return count == 0 ? List.of() : motion.finish(endNs);
  }

  /** How far inside a rest an instant must lie to be at rest for certain, ns. */
  long leastRestNs() {
    return motion.leastRestNs();
  }

  /** Widest spread of short means that counts as standing still, reading units. */
  double stillBand() {
    return motion.band();
  }

  List<Loss> losses() {
    return gaps.losses();
  }

  /** Slips and frozen stretches; a jump that ends a frozen stretch is no slip of its own. */
  List<ReadingFault> faults(List<Change> changes) {
    List<ReadingFault> frozen = freezes.faults(changes, motion.noisyAtRest());
    List<ReadingFault> all = new ArrayList<>(frozen);
    for (ReadingFault slip : slips.faults(lastNs)) {
      if (frozen.stream().noneMatch(f -> f.toNs() == slip.fromNs())) {
        all.add(slip);
      }
    }
    return all;
  }

  /** Stands where another one of the same settings stands. */
  void become(PositionTrack other) {
    rhythm.become(other.rhythm);
    unwrapper.become(other.unwrapper);
    noise.become(other.noise);
    ring.become(other.ring);
    motion.become(other.motion);
    outline.become(other.outline);
    gaps.become(other.gaps);
    slips.become(other.slips);
    freezes.become(other.freezes);
    count = other.count;
    repeats = other.repeats;
    steps = other.steps;
    singleSteps = other.singleSteps;
    lastNs = other.lastNs;
    heldSinceNs = other.heldSinceNs;
    last = other.last;
  }
}
