package tripline.truth;

import java.util.List;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

/**
 * Samples a motion and its contacts the way a field data logger does and pushes rows. Bits of the
 * masks are channel indexes of the actuator's plan. Allocates nothing per row.
 *
 * <p>A plan with a step back in time pushes falling stamps: for sinks that write files only.
 */
public final class Logger {
  private final LoggerPlan plan;
  private final Sensor sensor;
  private final Stamps positions = new Stamps();
  private final Stamps contacts = new Stamps();

  public Logger(LoggerPlan plan, Sensor sensor) {
    this.plan = plan;
    this.sensor = sensor;
  }

  public LoggerPlan plan() {
    return plan;
  }

  public Sensor sensor() {
    return sensor;
  }

  /** Stamps of the position readings of the last recording. */
  public Stamps positions() {
    return positions;
  }

  /** Stamps of the contact readings of the last recording. */
  public Stamps contacts() {
    return contacts;
  }

  /** Records the whole path. */
  public void record(
      Path path,
      Timeline timeline,
      int channels,
      List<Actuator.TrueMark> marks,
      Rng rng,
      SampleSink sink) {
    positions.clear();
    contacts.clear();
    long all = (1L << channels) - 1;
    double periodS = 1 / plan.rateHz();
    long scans = (long) (path.durationS() * plan.rateHz());
    long states = timeline.initially();
    long written = 0;
    long everWritten = 0;
    double writtenReading = Double.NaN;
    long stampBefore = Long.MIN_VALUE;
    int edge = 0;
    int mark = 0;
    for (long k = 1; k < scans; k++) {
      double timeS = (k + plan.jitter() * (rng.uniform() - 0.5)) * periodS;
      long timeNs = (long) (timeS * 1e9);
      long touched = 0;
      for (; edge < timeline.size() && timeline.timeNs(edge) <= timeNs; edge++) {
        states ^= timeline.toggles(edge);
        touched |= timeline.toggles(edge);
      }
      boolean readsContacts = k % plan.contactsEvery() == 0;
      boolean readsPosition = k % plan.positionEvery() == 0;
      double reading = readsPosition ? sensor.sample(path, timeS, rng) : Double.NaN;
      if (lost(timeS, rng)) {
        continue;
      }
      long seen = states;
      if (plan.inputs() == LoggerPlan.Inputs.LATCHED) {
        seen ^= touched & ~(states ^ written) & everWritten;
      }
      long stamp = timeNs / plan.stampNs() * plan.stampNs();
      if (timeS >= plan.stepBackAtS()) {
        stamp -= (long) (plan.stepBackS() * 1e9);
      } else if (stampBefore != Long.MIN_VALUE && rng.chance(plan.repeatShare())) {
        stamp = stampBefore;
      }
      long known = readsContacts ? all : 0;
      boolean marked = mark < marks.size() && marks.get(mark).timeS() <= timeS;
      if (plan.writes() == LoggerPlan.Writes.CHANGES_ONLY) {
        known &= (seen ^ written) | ~everWritten;
        reading = reading == writtenReading ? Double.NaN : reading;
        if (known == 0 && Double.isNaN(reading) && !marked) {
          continue;
        }
      }
      if (readsContacts) {
        written = seen;
        everWritten = all;
        contacts.add(stamp);
      }
      if (!Double.isNaN(reading)) {
        writtenReading = reading;
        positions.add(stamp);
      }
      sink.onRow(stamp, reading, known, seen & known);
      stampBefore = stamp;
      for (; mark < marks.size() && marks.get(mark).timeS() <= timeS; mark++) {
        String text = marks.get(mark).text();
        sink.onMark(stamp, Mark.of(text), text);
      }
    }
  }

  private boolean lost(double timeS, Rng rng) {
    boolean stretch = timeS >= plan.lossAtS() && timeS < plan.lossAtS() + plan.lossS();
    return stretch || (plan.lostShare() > 0 && rng.chance(plan.lostShare()));
  }
}
