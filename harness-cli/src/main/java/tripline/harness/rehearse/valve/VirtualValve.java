package tripline.harness.rehearse.valve;

import java.util.List;
import tripline.job.End;
import tripline.job.JobSheet;
import tripline.job.SensorSide;

/** A valve actuator at work. It stands still until a {@link Mover} moves it. */
public final class VirtualValve {
  /** One step of its time, ns. */
  public static final long STEP_NS = Motion.STEP_NS;

  /** Share of the torque that opened a torque contact at which it closes again. */
  private static final double TORQUE_RESETS = 0.3;

  private final ValveBuild build;
  private final List<String> channels;
  private final Motion motion;
  private final Cams cams;
  private final boolean[] torqueOpen = new boolean[End.values().length];
  private final Toggles toggles;
  private final Chance noise;
  private final Chance feel;

  /** A valve at its start, time 0; equal seeds give equal bounces and noise. */
  public VirtualValve(ValveBuild build, long seed) {
    this.build = build;
    Chance chance = new Chance(seed);
    noise = chance.split("noise");
    feel = chance.split("feel");
    channels = build.sheet().channels().contacts();
    motion = new Motion(build.lostMotionTurns(), build.startTurns());
    cams = new Cams(build, build.startTurns());
    long closed = 0;
    for (int i = 0; i < build.contacts().size(); i++) {
      closed |= cams.closed(i) ? bit(build.contacts().get(i).contact().channel()) : 0;
    }
    for (End end : End.values()) {
      closed |= build.sheet().torque(end).map(this::bit).orElse(0L);
    }
    toggles = new Toggles(closed, chance.split("bounce"));
  }

  /** What it was built as. */
  public ValveBuild build() {
    return build;
  }

  /** Its contact channels, in the order of their bits: contacts, torque contacts, contactors. */
  public List<String> channels() {
    return channels;
  }

  /** Its time, ns; a whole number of steps. */
  public long nowNs() {
    return motion.nowNs();
  }

  /** Where the drive stands, x. */
  public double driveTurns() {
    return motion.drive();
  }

  /** Where the handwheel stands: x while closing, x plus the lost motion while opening. */
  public double handwheelTurns() {
    return motion.handwheel();
  }

  /** Speed of the handwheel, turns/s, + opening. */
  public double turnsPerS() {
    return motion.speed();
  }

  /** Count of the position sensor at a time of the last step. */
  public int countAt(long timeNs) {
    SensorBuild sensor = build.sensor();
    long then = Math.max(0, timeNs - sensor.delayNs());
    double turns =
        sensor.side() == SensorSide.HANDWHEEL ? motion.handwheelAt(then) : motion.driveAt(then);
    return sensor.count(turns, sensor.noiseTurns() * noise.gaussian());
  }

  /** Channels closed at a time of the last step, bounces and all. */
  public long closedAt(long timeNs) {
    return toggles.closedAt(timeNs);
  }

  /** How many times a channel changed electrically in the last step. */
  public int edges() {
    return toggles.count();
  }

  /** When, ns. */
  public long edgeNs(int edge) {
    return toggles.timeNs(edge);
  }

  /** Which channel. */
  public int edgeChannel(int edge) {
    return toggles.channel(edge);
  }

  /** Nothing moves for one step. */
  public void rest() {
    step(motion.handwheel(), 0);
  }

  /** Where a trip point of a cam lies now, x, on the approach to the end it is measured from. */
  public double tripTurns(int cam, int point) {
    return tripTurns(cam, point, build.cams().get(cam).points().get(point).from());
  }

  /** Where a trip point of a cam lies now, x, on the approach to an end. */
  public double tripTurns(int cam, int point, End toward) {
    return cams.tripTurns(cam, point, toward);
  }

  /** Whether the drive stands beyond a cam's trip point, toward the open end. */
  boolean above(int cam, int point) {
    return cams.above(cam, point, driveTurns());
  }

  /** Standard normal deviate of the hand's feel for a stop. */
  double feel() {
    return feel.gaussian();
  }

  /** One step of {@value #STEP_NS} ns: the handwheel is here afterwards, at this speed. */
  void step(double handwheel, double turnsPerS) {
    motion.append(handwheel, turnsPerS);
    cams.follow(motion.drive(), this::changed);
    for (End end : End.values()) {
      followTorque(end);
    }
    toggles.passTo(motion.nowNs());
  }

  private void changed(int contact, double handwheel) {
    long when = motion.speed() == 0 && standing() ? nowNs() : motion.passedNs(handwheel);
    String channel = build.contacts().get(contact).contact().channel();
    toggles.change(channels.indexOf(channel), when + build.contactDelayNs());
  }

  private boolean standing() {
    return motion.handwheel() == motion.handwheelAt(nowNs() - STEP_NS);
  }

  /** How far the drive is wound up beyond the stop of an end, turns; 0: free. */
  double windUp(End end) {
    double beyond = end == End.CLOSED ? -driveTurns() : driveTurns() - build.stopTurns(End.OPEN);
    return Math.max(0, beyond);
  }

  boolean torqueOpen(End end) {
    return torqueOpen[at(end)];
  }

  private void followTorque(End end) {
    double trips = build.motor().torqueTripTurns();
    boolean open = windUp(end) > (torqueOpen[at(end)] ? TORQUE_RESETS * trips : trips);
    if (open != torqueOpen[at(end)]) {
      torqueOpen[at(end)] = open;
      build.sheet().torque(end).ifPresent(this::toggleNow);
    }
  }

  /** The contactor that drives toward an end pulls in or drops out. */
  void contactor(End end) {
    build.sheet().motor(end).ifPresent(this::toggleNow);
  }

  private void toggleNow(String channel) {
    toggles.change(channels.indexOf(channel), nowNs() + build.contactDelayNs());
  }

  /** Somebody turns a cam's adjuster: its trip points move so far, + toward open. */
  void turnAdjuster(int cam, double byTurns) {
    cams.adjust(cam, byTurns);
  }

  /** Whether the limit contact of an end is open; false where none is charted. */
  boolean limitOpen(End end) {
    return cams.limitOpen(end);
  }

  private long bit(String channel) {
    return 1L << channels.indexOf(channel);
  }

  private static int at(End end) {
    return end == End.CLOSED ? 0 : 1;
  }

  /** The sheet it was built after. */
  public JobSheet sheet() {
    return build.sheet();
  }
}
