package tripline.reduce;

import java.util.ArrayList;
import java.util.List;
import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

/**
 * Takes a recording sample by sample and reduces it to a {@link Trace}. {@link #finish} may be
 * called at any time, as often as wanted: it answers as if the recording ended there, and the
 * reduction goes on.
 *
 * <p>Rows are worked through a batch at a time. Most are quiet: an even distance after the row
 * before, every contact as it was, a reading near the last one, nothing due. Stretches of them are
 * added up in plain loops; every other row is looked at by itself. Which way a row takes makes no
 * difference to the trace.
 */
public final class Reduction implements SampleSink {
  /** A logger that writes only changes repeats itself less often than in one row of so many. */
  private static final int REPEATING_SHARE = 50;

  /** Chores are done this often at least, ns of the recording. */
  private static final long CHORES_NS = 25_000_000;

  /** Whether stretches of quiet rows are taken together. */
  enum Shortcut {
    TAKEN,
    AVOIDED
  }

  private final ReductionSettings settings;
  private final Shortcut shortcut;
  private final RowBatch batch = new RowBatch();
  private final QuietRows quiet = new QuietRows(batch);
  private final Rhythm rhythm = new Rhythm();
  private final PositionTrack positions;
  private final ContactBursts bursts;
  private final SpotLog spots;
  private final GapLog gaps;
  private final List<Loss> reported = new ArrayList<>();

  private boolean started;
  private long firstNs;
  private long lastOtherNs = Long.MIN_VALUE;
  private long rows;
  private long lastRowNs = Long.MIN_VALUE;
  private long stampBeforeNs;
  private long nextChoreNs = Long.MIN_VALUE;
  private long knownAtStamp;
  private boolean readingAtStamp;
  private long repeatedStamps;
  private long firstRepeatNs;

  public Reduction(ReductionSettings settings) {
    this(settings, Shortcut.TAKEN);
  }

  Reduction(ReductionSettings settings, Shortcut shortcut) {
    this.settings = settings;
    this.shortcut = shortcut;
    this.positions = new PositionTrack(settings, rhythm);
    WindowCutter cutter = new WindowCutter(positions.ring(), positions.noise(), rhythm);
    this.spots = new SpotLog(cutter, settings);
    this.bursts = new ContactBursts(settings.settleNs(), rhythm, spots::await);
    this.gaps = new GapLog(rhythm, Loss.What.ROWS, positions.noise(), this::writesAll);
  }

  @Override
  public void onRow(long timeNs, double reading, long known, long closed) {
    if (!batch.takes(known, closed)) {
      takeBatch();
      batch.begin(known, closed);
    }
    batch.add(timeNs, reading);
  }

  @Override
  public void onRows(long[] timesNs, double[] readings, int from, int to, long known, long closed) {
    int next = from;
    while (next < to) {
      if (!batch.takes(known, closed)) {
        takeBatch();
        batch.begin(known, closed);
      }
      next += batch.add(timesNs, readings, next, to);
    }
  }

  private void takeBatch() {
    positions.unwrap(batch);
    int row = 0;
    while (row < batch.size()) {
      if (shortcut == Shortcut.TAKEN && findQuiet(row)) {
        takeQuiet();
        row = quiet.end();
      } else {
        take(batch.timeNs[row], batch.reading[row], batch.known(), batch.closed());
        row++;
      }
    }
    batch.begin(batch.known(), batch.closed());
  }

  private boolean findQuiet(int from) {
    boolean quietBefore = rows > 0 && positions.lastNs() == lastRowNs;
    return quietBefore
        && bursts.isQuiet(batch.known(), batch.closed())
        && quiet.find(
            from,
            lastRowNs,
            positions.last(),
            Math.min(nextChoreNs, positions.dueNs()),
            positions.quietUntilNs(),
            Math.min(gaps.longestUsualNs(), positions.longestQuietNs()),
            positions.widestQuietStep());
  }

  private void takeQuiet() {
    quiet.addTo(rhythm, lastRowNs);
    positions.takeQuiet(quiet);
    stampBeforeNs = quiet.rows() > 1 ? quiet.times()[quiet.end() - 2] : lastRowNs;
    lastRowNs = quiet.lastNs();
    knownAtStamp = batch.known();
    readingAtStamp = true;
    rows += quiet.rows();
    bursts.onQuietRows(quiet.rows(), lastRowNs);
    if (lastRowNs >= nextChoreNs) {
      doChores(lastRowNs);
    }
  }

  /**
   * A row by itself.
   *
   * @param reading unwrapped
   */
  private void take(long timeNs, double reading, long known, long closed) {
    boolean read = !Double.isNaN(reading);
    if (timeNs != lastRowNs || rows == 0) {
      onNewStamp(timeNs, reading);
      knownAtStamp = known;
      readingAtStamp = read;
    } else {
      onSameStamp(timeNs, read, known);
    }
    rows++;
    if (read) {
      positions.onReading(timeNs, reading);
    }
    bursts.onRow(timeNs, stampBeforeNs, known, closed);
    if (timeNs >= nextChoreNs) {
      doChores(timeNs);
    }
  }

  private void onNewStamp(long timeNs, double reading) {
    if (rows == 0) {
      begin(timeNs);
      stampBeforeNs = timeNs;
    } else {
      stampBeforeNs = lastRowNs;
      rhythm.add(timeNs - lastRowNs);
      gaps.onDistance(lastRowNs, timeNs, positions.last(), reading);
    }
    lastRowNs = timeNs;
  }

  /**
   * Rows of one stamp that carry different cells are one moment; the same cell twice is a repeat.
   */
  private void onSameStamp(long timeNs, boolean read, long known) {
    if ((known & knownAtStamp) != 0 || (read && readingAtStamp)) {
      firstRepeatNs = repeatedStamps == 0 ? timeNs : firstRepeatNs;
      repeatedStamps++;
    }
    knownAtStamp |= known;
    readingAtStamp |= read;
  }

  /** What need not be done with every sample. */
  private void doChores(long timeNs) {
    gaps.learn();
    positions.doChores();
    spots.onTime(timeNs);
    nextChoreNs = Math.min(timeNs + CHORES_NS, spots.nextReadyNs());
  }

  @Override
  public void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {
    takeBatch();
    see(timeNs);
    bursts.onEdge(timeNs, resolutionNs, channel, state);
    doChores(timeNs);
  }

  @Override
  public void onMark(long timeNs, Mark mark, String text) {
    takeBatch();
    see(timeNs);
    bursts.onTime(timeNs);
    spots.await(new Happening.Marked(timeNs, mark, text));
    doChores(timeNs);
  }

  @Override
  public void onLoss(long fromNs, long toNs, long samples) {
    takeBatch();
    see(toNs);
    if (reported.size() < GapLog.MOST) {
      reported.add(new Loss(fromNs, toNs, samples, Loss.What.ROWS, Double.NaN));
    } else {
      reported.set(GapLog.MOST - 1, joined(reported.get(GapLog.MOST - 1), toNs, samples));
    }
  }

  private static Loss joined(Loss last, long toNs, long samples) {
    long sum = last.samples() < 0 || samples < 0 ? -1 : last.samples() + samples;
    return new Loss(last.fromNs(), toNs, sum, Loss.What.ROWS, Double.NaN);
  }

  /** Rows that tell nothing new are common. */
  private boolean writesAll() {
    return REPEATING_SHARE * Math.max(bursts.repeats(), positions.repeats()) > rows;
  }

  private void begin(long timeNs) {
    if (!started) {
      started = true;
      firstNs = timeNs;
    }
  }

  /** A stamp that is no row's. */
  private void see(long timeNs) {
    begin(timeNs);
    lastOtherNs = timeNs;
  }

  private long lastNs() {
    return Math.max(lastRowNs, lastOtherNs);
  }

  /** The trace as if the recording ended now. */
  public Trace finish() {
    takeBatch();
    long lastNs = lastNs();
    bursts.onTime(lastNs);
    List<SpotLog.Placed> all = spots.all();
    PlaceSolver solver = new PlaceSolver(positions.noise());
    Place[] places = solver.solve(all.stream().map(SpotLog.Placed::spot).toList());
    List<Movement> movements = positions.movements(lastNs);
    Stillness stillness = new Stillness(movements, positions.leastRestNs(), adjustedNs(all));
    List<Change> changes = new ArrayList<>();
    List<Disturbance> disturbances = new ArrayList<>();
    List<MarkPoint> marks = new ArrayList<>();
    for (int i = 0; i < places.length; i++) {
      Happening happening = all.get(i).happening();
      Place place = places[i];
      if (happening instanceof Happening.Settled s) {
        changes.add(change(s, place, stillness));
      } else if (happening instanceof Happening.Disturbed d) {
        disturbances.add(new Disturbance(d.channel(), d.fromNs(), d.toNs(), d.edges(), place));
      } else if (happening instanceof Happening.Marked m) {
        marks.add(new MarkPoint(m.atNs(), m.mark(), m.text(), place));
      }
    }
    double quantum = positions.noise().quantum();
    double noise = solver.noise();
    return new Trace(
        settings.channels(),
        firstNs,
        started ? lastNs : 0,
        rows,
        positions.count(),
        Math.sqrt(Math.max(0, noise * noise - quantum * quantum / 12)),
        quantum,
        rhythm.quantileNs(0.05),
        movements,
        changes,
        disturbances,
        marks,
        losses(),
        faults(changes),
        bursts.start(),
        bursts.end(),
        positions.outline());
  }

  private static long[] adjustedNs(List<SpotLog.Placed> all) {
    return all.stream()
        .map(SpotLog.Placed::happening)
        .filter(h -> h instanceof Happening.Marked m && m.mark() == Mark.ADJUSTED)
        .mapToLong(h -> ((Happening.Marked) h).atNs())
        .toArray();
  }

  private Change change(Happening.Settled s, Place place, Stillness stillness) {
    Change.Motion motion =
        place.known() ? stillness.at(s.atNs() + s.skewNs(settings)) : Change.Motion.UNKNOWN;
    return new Change(
        s.channel(),
        s.to(),
        s.beforeNs(),
        s.afterNs(),
        s.lastEdgeNs(),
        s.bounces(),
        place,
        motion,
        settings.skewNs() - s.skewNs(settings));
  }

  /**
   * What was reported is not told again as a gap, nor a stretch without rows as one without
   * positions.
   */
  private List<Loss> losses() {
    List<Loss> losses = new ArrayList<>(reported);
    for (Loss loss : gaps.losses()) {
      if (reported.stream().noneMatch(l -> l.fromNs() < loss.toNs() && l.toNs() > loss.fromNs())) {
        losses.add(loss);
      }
    }
    List<Loss> told = List.copyOf(losses);
    for (Loss loss : positions.losses()) {
      if (told.stream().noneMatch(l -> l.fromNs() <= loss.fromNs() && l.toNs() >= loss.toNs())) {
        losses.add(loss);
      }
    }
    losses.sort((a, b) -> Long.compare(a.fromNs(), b.fromNs()));
    return losses;
  }

  private List<ReadingFault> faults(List<Change> changes) {
    List<ReadingFault> faults = new ArrayList<>(positions.faults(changes));
    if (repeatedStamps > 0) {
      faults.add(
          new ReadingFault(
              ReadingFault.Kind.REPEATED_STAMP, firstRepeatNs, firstRepeatNs, repeatedStamps));
    }
    spots.faults(faults);
    faults.sort((a, b) -> Long.compare(a.fromNs(), b.fromNs()));
    return faults;
  }

  /** Position as last read, unwrapped, in units of the position channel; NaN before the first. */
  public double reading() {
    takeBatch();
    return positions.last();
  }

  /** Readings that stay within this of each other for a while stand still, reading units. */
  public double stillBand() {
    takeBatch();
    return positions.stillBand();
  }

  /**
   * Makes this reduction stand where another one stands; from then on neither knows of the other. A
   * recording that goes on can so be looked at as a whole, on another thread too, while it does.
   * Copies about 1 MB and allocates next to nothing.
   *
   * @throws IllegalArgumentException if the other one was made with other settings
   */
  public void become(Reduction other) {
    if (!settings.equals(other.settings)) {
      throw new IllegalArgumentException("a reduction of other settings");
    }
    other.takeBatch();
    batch.begin(other.batch.known(), other.batch.closed());
    rhythm.become(other.rhythm);
    positions.become(other.positions);
    bursts.become(other.bursts);
    spots.become(other.spots);
    gaps.become(other.gaps);
    reported.clear();
    reported.addAll(other.reported);
    started = other.started;
    firstNs = other.firstNs;
    lastOtherNs = other.lastOtherNs;
    rows = other.rows;
    lastRowNs = other.lastRowNs;
    stampBeforeNs = other.stampBeforeNs;
    nextChoreNs = other.nextChoreNs;
    knownAtStamp = other.knownAtStamp;
    readingAtStamp = other.readingAtStamp;
    repeatedStamps = other.repeatedStamps;
    firstRepeatNs = other.firstRepeatNs;
  }
}
