package tripline.reduce;

/** What the readings of a rest come to; and, over all rests, how they stir. */
final class RestReadings {
  /** Readings at rest that can tell noise, and its standard deviation, in counts. */
  private static final int ENOUGH_STIRRED = 100;

  private static final double NOISY_COUNTS = 0.8;

  /** A hand starts so slowly that a coarse encoder shows it about this late, ns. */
  private static final long START_NS = 150_000_000;

  /** Stretches that may wait until it is known that they were no start. */
  private static final int WAITING = 8;

  private final ReadingRing ring;
  private final NoiseGauge noise;
  private final long[] waitingFrom = new long[WAITING];
  private final long[] waitingTo = new long[WAITING];
  private double origin;
  private double sum;
  private long count;
  private CountTally tally = new CountTally();
  private int waiting;
  private double stirredSquares;
  private long stirredFreedom;

  RestReadings(ReadingRing ring, NoiseGauge noise) {
    this.ring = ring;
    this.noise = noise;
  }

  /** A rest begins, at about this reading. */
  void begin(double reading) {
    origin = reading;
    sum = 0;
    count = 0;
    tally = new CountTally();
    waiting = 0;
  }

  /** Takes the readings of a stretch of it; stretches come in order of time. */
  void add(long fromNs, long toNs, double mean, int readings) {
    sum += (mean - origin) * readings;
    count += readings;
    double squares = 0;
    long seen = 0;
    long run = ring.firstEndingAtOrAfter(fromNs);
    for (; run < ring.end() && ring.from(run) <= toNs; run++) {
      double off = ring.value(run) - mean;
      squares += off * off * ring.count(run);
      seen += ring.count(run);
    }
    if (seen > 1 && squares > 0 && seen == readings) {
      stirredSquares += squares;
      stirredFreedom += seen - 1;
    }
    tally(fromNs, toNs);
  }

  /** Tallies what no start can reach any more, so that the rest alone is tallied when it ends. */
  private void tally(long fromNs, long toNs) {
    while (waiting == WAITING || (waiting > 0 && fromNs - waitingTo[0] >= START_NS)) {
      show(waitingFrom[0], waitingTo[0]);
      waiting--;
      System.arraycopy(waitingFrom, 1, waitingFrom, 0, waiting);
      System.arraycopy(waitingTo, 1, waitingTo, 0, waiting);
    }
    waitingFrom[waiting] = fromNs;
    waitingTo[waiting] = toNs;
    waiting++;
  }

  private void show(long fromNs, long toNs) {
    long run = ring.firstEndingAtOrAfter(fromNs);
    for (; tally.mayTell() && run < ring.end() && ring.from(run) <= toNs; run++) {
      tally.add(ring.value(run), inside(run, fromNs, toNs), noise.quantum());
    }
  }

  /** Readings of a run within a stretch of time. */
  private long inside(long run, long fromNs, long toNs) {
    long begin = ring.from(run);
    long end = ring.to(run);
    if (begin >= fromNs && end <= toNs) {
      return ring.count(run);
    }
    double share = (double) (Math.min(end, toNs) - Math.max(begin, fromNs)) / (end - begin);
    return Math.max(1, Math.round(ring.count(run) * share));
  }

  /** Mean reading. */
  double mean() {
    return origin + sum / Math.max(1, count);
  }

  /** Its standard uncertainty by noise and, where that is coarser, by one count. */
  double u() {
    double random = noise.noise() / Math.sqrt((double) Math.max(1, count));
    return grain() == Movement.Grain.COUNT
        ? Math.hypot(random, noise.quantum() / Math.sqrt(12))
        : random;
  }

  /** With little noise a resting encoder shows one count, however long it is looked at. */
  Movement.Grain grain() {
    return noise.noise() < 0.5 * noise.quantum() ? Movement.Grain.COUNT : Movement.Grain.NOISE;
  }

  /** The counts shown, but for the last moments, from now on those of this rest until it ends. */
  CountTally tally() {
    return tally;
  }

  /**
   * Whether readings show noise of a count or more at rest: what an encoder that dithers on an edge
   * cannot.
   */
  boolean noisy() {
    double quantum = noise.quantum();
    return stirredFreedom >= ENOUGH_STIRRED
        && stirredSquares > NOISY_COUNTS * NOISY_COUNTS * quantum * quantum * stirredFreedom;
  }

  /** Stands where another one stands. */
  void become(RestReadings other) {
    origin = other.origin;
    sum = other.sum;
    count = other.count;
    tally = other.tally.copy();
    waiting = other.waiting;
    System.arraycopy(other.waitingFrom, 0, waitingFrom, 0, WAITING);
    System.arraycopy(other.waitingTo, 0, waitingTo, 0, WAITING);
    stirredSquares = other.stirredSquares;
    stirredFreedom = other.stirredFreedom;
  }
}
