package tripline.live;

import tripline.reduce.Reduction;
import tripline.reduce.ReductionSettings;
import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

/**
 * A reduction that can be looked at while the recording goes on: what was read last at any time,
 * and a copy of the whole to be explained. Nothing is allocated per sample.
 */
public final class LiveReduction implements SampleSink {
  private final ReductionSettings settings;
  private final Reduction reduction;
  private final RecentReadings recent;
  private long timeNs;
  private long known;
  private long closed;
  private long happenings;
  private Now.Motion motion = Now.Motion.STANDING;

  /** A recording of these settings begins. */
  public LiveReduction(ReductionSettings settings) {
    this.settings = settings;
    reduction = new Reduction(settings);
    recent = new RecentReadings(settings.turnsPerUnit());
  }

  @Override
  public void onRow(long atNs, double reading, long read, long shut) {
    reduction.onRow(atNs, reading, read, shut);
    timeNs = atNs;
    long states = (closed & ~read) | (shut & read);
    if (states != closed || (read & ~known) != 0) {
      happenings++;
      closed = states;
      known |= read;
    }
    if (!Double.isNaN(reading) && recent.add(atNs, reduction.reading())) {
      onMotion(recent.motion(reduction.stillBand()));
    }
  }

  private void onMotion(Now.Motion next) {
    happenings += next == motion ? 0 : 1;
    motion = next;
  }

  @Override
  public void onEdge(long atNs, long resolutionNs, int channel, ContactState state) {
    reduction.onEdge(atNs, resolutionNs, channel, state);
    timeNs = atNs;
    long bit = 1L << channel;
    known |= bit;
    closed = state == ContactState.CLOSED ? closed | bit : closed & ~bit;
    happenings++;
  }

  @Override
  public void onMark(long atNs, Mark mark, String text) {
    reduction.onMark(atNs, mark, text);
    timeNs = atNs;
    happenings++;
  }

  @Override
  public void onLoss(long fromNs, long toNs, long samples) {
    reduction.onLoss(fromNs, toNs, samples);
    timeNs = toNs;
    happenings++;
  }

  /** Rises with everything that may change the explanation beyond a figure getting better. */
  public long happenings() {
    return happenings;
  }

  /** The latest that was read. */
  public Now now() {
    TurningPoints turns = recent.turns();
    return new Now(timeNs, turns.last(), turns, motion, known, closed);
  }

  /** A reduction of the same settings, to be made a copy of this one by {@link #copyTo}. */
  public Reduction spare() {
    return new Reduction(settings);
  }

  /** Makes a spare stand where this one does, as {@link Reduction#become} has it. */
  public void copyTo(Reduction spare) {
    spare.become(reduction);
  }
}
