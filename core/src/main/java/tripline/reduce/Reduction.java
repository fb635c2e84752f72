package tripline.reduce;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

/**
 * Takes a recording sample by sample and reduces it to a {@link Trace}. {@link #finish} may be
 * called at any time, as often as wanted: it answers as if the recording ended there, and the
 * reduction goes on.
 *
 * <p>Footprint: about 1.2 MB of fixed rings and tables, and about 3 kB for every settled change,
 * disturbance and mark (at most {@value #MOST_SPOTS} are kept; beyond that they are counted and
 * reported as left out).
 */
public final class Reduction implements SampleSink {
  /** Events kept; a contact that chatters without end must not fill the memory. */
  public static final int MOST_SPOTS = 20_000;

  private static final long SETTLE_WINDOW_NS = 500_000_000;
  private static final long LONGEST_WINDOW_NS = 2_000_000_000;
  private static final int WRITES_CHANGES_SHARE = 10;

  private final ReductionSettings settings;
  private final Rhythm rowRhythm = new Rhythm();
  private final Rhythm positionRhythm = new Rhythm();
  private final NoiseGauge noise;
  private final ReadingRing ring = new ReadingRing();
  private final Unwrapper unwrapper;
  private final WindowCutter cutter;
  private final MotionTracker motion;
  private final ContactBursts bursts;
  private final GapLog rowGaps = new GapLog(rowRhythm, Loss.What.ROWS);
  private final GapLog positionGaps = new GapLog(positionRhythm, Loss.What.POSITION);
  private final OutlineThinner outline = new OutlineThinner();
  private final List<Event> events = new ArrayList<>();
  private final List<Event> waiting = new ArrayList<>();
  private final List<Loss> reported = new ArrayList<>();

  private boolean started;
  private long firstNs;
  private long lastNs;
  private long rows;
  private long contactRows;
  private long positions;
  private long positionRepeats;
  private long lastPositionNs;
  private double lastPosition = Double.NaN;
  private long repeatedKnown;
  private boolean repeatedPosition;
  private long repeatedStamps;
  private long firstRepeatNs;
  private long nextReadyNs = Long.MAX_VALUE;
  private long leftOut;

  /** Something that happened at an instant whose position is wanted. */
  private static final class Event {
    final Kind kind;
    final long atNs;
    final int channel;
    final ContactState to;
    final long beforeNs;
    final long afterNs;
    final long lastNs;
    final int edges;
    final Mark mark;
    final String text;
    List<FitWindow> windows = List.of();

    Event(
        Kind kind,
        long atNs,
        int channel,
        ContactState to,
        long beforeNs,
        long afterNs,
        long lastNs,
        int edges,
        Mark mark,
        String text) {
      this.kind = kind;
      this.atNs = atNs;
      this.channel = channel;
      this.to = to;
      this.beforeNs = beforeNs;
      this.afterNs = afterNs;
      this.lastNs = lastNs;
      this.edges = edges;
      this.mark = mark;
      this.text = text;
    }

    enum Kind {
      CHANGE,
      DISTURBANCE,
      MARK
    }
  }

  public Reduction(ReductionSettings settings) {
    this.settings = settings;
    this.noise = new NoiseGauge(settings.quantum());
    this.unwrapper = new Unwrapper(settings.modulus().orElse(Double.NaN));
    this.cutter = new WindowCutter(ring, noise, rowRhythm);
    this.motion = new MotionTracker(settings.turnsPerUnit(), noise);
    this.bursts = new ContactBursts(settings.settleNs(), rowRhythm, new BurstSink());
    motion.probe(new StoppingFit(ring, noise));
  }

  @Override
  public void onRow(long timeNs, double reading, long known, long closed) {
    if (!started) {
      started = true;
      firstNs = timeNs;
      lastNs = timeNs;
    } else if (timeNs != lastNs) {
      onNewStamp(timeNs, reading);
    } else {
      onSameStamp(timeNs, reading, known);
    }
    repeatedKnown |= known;
    repeatedPosition |= !Double.isNaN(reading);
    rows++;
    if (known != 0) {
      contactRows++;
    }
    if (!Double.isNaN(reading)) {
      onPosition(timeNs, unwrapper.unwrap(reading));
    }
    bursts.onRow(timeNs, known, closed);
    if (timeNs >= nextReadyNs) {
      cutReady(timeNs);
    }
  }

  private void onNewStamp(long timeNs, double reading) {
    rowRhythm.add(timeNs - lastNs);
    rowGaps.onDistance(lastNs, timeNs, lastPosition, reading);
    lastNs = timeNs;
    repeatedKnown = 0;
    repeatedPosition = false;
  }

  /**
   * Rows of one stamp that carry different cells are one moment; the same cell twice is a repeat.
   */
  private void onSameStamp(long timeNs, double reading, long known) {
    if (rows > 0
        && ((known & repeatedKnown) != 0 || (repeatedPosition && !Double.isNaN(reading)))) {
      if (repeatedStamps == 0) {
        firstRepeatNs = timeNs;
      }
      repeatedStamps++;
    }
  }

  private void onPosition(long timeNs, double reading) {
    if (positions > 0) {
      if (timeNs > lastPositionNs) {
        long distance = timeNs - lastPositionNs;
        positionRhythm.add(distance);
        positionGaps.onDistance(lastPositionNs, timeNs, lastPosition, reading);
        if (reading == lastPosition) {
          positionRepeats++;
        } else if (distance > BLOCK_SILENCE_NS) {
          holdOverSilence(timeNs, reading);
        }
      } else {
        positionRepeats++;
      }
    }
    positions++;
    lastPositionNs = timeNs;
    lastPosition = reading;
    ring.add(timeNs, reading);
    noise.onReading(timeNs, reading);
    motion.onReading(timeNs, reading);
    outline.onReading(timeNs, reading);
  }

  private static final long BLOCK_SILENCE_NS = 2_000_000;

  /**
   * A logger that writes only changes says by its silence that the reading held until just before
   * the next one.
   */
  private void holdOverSilence(long timeNs, double reading) {
    long scan = rowRhythm.quantileNs(0.05);
    long until = timeNs - scan;
    if (scan <= 0 || until - lastPositionNs < scan / 2 || !writesChangesOnly()) {
      return;
    }
    double quantum = Math.max(noise.quantum(), 0);
    if (Math.abs(reading - lastPosition) > 3.5 * quantum) {
      return;
    }
    ring.hold(until, (int) Math.min(1 << 20, (until - lastPositionNs) / scan));
    motion.onReading(until, lastPosition);
    outline.onReading(until, lastPosition);
  }

  private boolean writesChangesOnly() {
    return positions >= 10 && positionRepeats * WRITES_CHANGES_SHARE < positions;
  }

  @Override
  public void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {
    passTime(timeNs);
    bursts.onEdge(timeNs, resolutionNs, channel, state);
  }

  @Override
  public void onMark(long timeNs, Mark mark, String text) {
    passTime(timeNs);
    await(
        new Event(
            Event.Kind.MARK, timeNs, -1, ContactState.OPEN, timeNs, timeNs, timeNs, 0, mark, text));
  }

  @Override
  public void onLoss(long fromNs, long toNs, long samples) {
    passTime(toNs);
    if (reported.size() < GapLog.MOST) {
      reported.add(new Loss(fromNs, toNs, samples, Loss.What.ROWS, Double.NaN));
    }
  }

  private void passTime(long timeNs) {
    if (!started) {
      started = true;
      firstNs = timeNs;
      lastNs = timeNs;
    }
    bursts.onTime(timeNs);
    if (timeNs >= nextReadyNs) {
      cutReady(timeNs);
    }
  }

  private final class BurstSink implements ContactBursts.Sink {
    @Override
    public void onSettled(
        int channel, ContactState to, long beforeNs, long afterNs, long lastEdgeNs, int bounces) {
      long at = beforeNs + (afterNs - beforeNs) / 2;
      await(
          new Event(
              Event.Kind.CHANGE,
              at,
              channel,
              to,
              beforeNs,
              afterNs,
              lastEdgeNs,
              bounces,
              Mark.NOTE,
              ""));
    }

    @Override
    public void onDisturbance(int channel, long beforeNs, long fromNs, long toNs, int edges) {
      long at = beforeNs + (fromNs - beforeNs) / 2;
      await(
          new Event(
              Event.Kind.DISTURBANCE,
              at,
              channel,
              ContactState.OPEN,
              beforeNs,
              fromNs,
              toNs,
              edges,
              Mark.NOTE,
              ""));
    }
  }

  private void await(Event event) {
    if (events.size() + waiting.size() >= MOST_SPOTS) {
      leftOut++;
      return;
    }
    waiting.add(event);
    nextReadyNs = Math.min(nextReadyNs, event.atNs + settings.skewNs() + SETTLE_WINDOW_NS);
  }

  /** Cuts the windows of events whose surroundings have been seen. */
  private void cutReady(long nowNs) {
    nextReadyNs = Long.MAX_VALUE;
    for (int i = 0; i < waiting.size(); ) {
      Event event = waiting.get(i);
      long centre = event.atNs + settings.skewNs();
      long ready = centre + (fewRuns(centre) ? LONGEST_WINDOW_NS : SETTLE_WINDOW_NS);
      if (nowNs >= ready) {
        event.windows = cutter.cut(centre);
        events.add(event);
        waiting.remove(i);
      } else {
        nextReadyNs = Math.min(nextReadyNs, ready);
        i++;
      }
    }
  }

  /**
   * With few runs about it an instant may lie on a coarse encoder, whose window wants to be longer.
   */
  private boolean fewRuns(long centreNs) {
    long from = ring.firstEndingAtOrAfter(centreNs - SETTLE_WINDOW_NS);
    return ring.end() - from < 20;
  }

  /** The trace as if the recording ended now. */
  public Trace finish() {
    bursts.onEnd(lastNs);
    List<Event> all = new ArrayList<>(events);
    for (Event event : waiting) {
      Event cut = copyOf(event);
      cut.windows = cutter.cut(event.atNs + settings.skewNs());
      all.add(cut);
    }
    all.sort(Comparator.comparingLong(e -> e.atNs));
    List<Spot> spots = new ArrayList<>(all.size());
    for (Event event : all) {
      spots.add(new Spot(event.atNs + settings.skewNs(), event.windows));
    }
    PlaceSolver solver = new PlaceSolver(noise);
    Place[] places = solver.solve(spots);
    return trace(all, places, solver.noise());
  }

  private static Event copyOf(Event e) {
    return new Event(
        e.kind, e.atNs, e.channel, e.to, e.beforeNs, e.afterNs, e.lastNs, e.edges, e.mark, e.text);
  }

  private Trace trace(List<Event> all, Place[] places, double fittedNoise) {
    List<Movement> movements = positions == 0 ? List.of() : motion.finish(lastNs);
    Stillness stillness = new Stillness(movements, motion.leastRestNs());
    List<Change> changes = new ArrayList<>();
    List<Disturbance> disturbances = new ArrayList<>();
    List<MarkPoint> marks = new ArrayList<>();
    for (int i = 0; i < places.length; i++) {
      Event e = all.get(i);
      Place place = places[i];
      switch (e.kind) {
        case CHANGE ->
            changes.add(
                new Change(
                    e.channel,
                    e.to,
                    e.beforeNs,
                    e.afterNs,
                    e.lastNs,
                    e.edges,
                    place,
                    place.known()
                        ? stillness.at(e.atNs + settings.skewNs())
                        : Change.Motion.UNKNOWN));
        case DISTURBANCE ->
            disturbances.add(new Disturbance(e.channel, e.afterNs, e.lastNs, e.edges, place));
        case MARK -> marks.add(new MarkPoint(e.atNs, e.mark, e.text, place));
      }
    }
    double quantum = noise.quantum();
    double white = Math.sqrt(Math.max(0, fittedNoise * fittedNoise - quantum * quantum / 12));
    return new Trace(
        settings.channels(),
        firstNs,
        lastNs,
        rows,
        positions,
        white,
        quantum,
        rowRhythm.quantileNs(0.05),
        movements,
        changes,
        disturbances,
        marks,
        losses(quantum, fittedNoise),
        faults(),
        bursts.start(),
        bursts.end(),
        outline.outline());
  }

  private List<Loss> losses(double quantum, double fittedNoise) {
    List<Loss> losses = new ArrayList<>(reported);
    GapLog.Writes writes =
        writesChangesOnly() && 2 * contactRows < rows
            ? GapLog.Writes.CHANGES_ONLY
            : GapLog.Writes.EVERY_SAMPLE;
    losses.addAll(rowGaps.losses(3.5 * quantum + 6 * fittedNoise, writes));
    for (Loss loss : positionGaps.losses(3.5 * quantum + 6 * fittedNoise, writes)) {
      boolean told =
          losses.stream().anyMatch(l -> l.fromNs() <= loss.fromNs() && l.toNs() >= loss.toNs());
      if (!told) {
        losses.add(loss);
      }
    }
    losses.sort(Comparator.comparingLong(Loss::fromNs));
    return losses;
  }

  private List<ReadingFault> faults() {
    List<ReadingFault> faults = new ArrayList<>();
    if (repeatedStamps > 0) {
      faults.add(
          new ReadingFault(
              ReadingFault.Kind.REPEATED_STAMP, firstRepeatNs, firstRepeatNs, repeatedStamps));
    }
    return faults;
  }

  /** Events beyond {@link #MOST_SPOTS} that were counted but not kept. */
  public long leftOut() {
    return leftOut;
  }
}
