package tripline.truth;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import tripline.job.End;
import tripline.sample.ContactState;

/**
 * An actuator at work: takes the motion of its handwheel side step by step, lets drive, cams and
 * contacts follow, and keeps what truly happened.
 */
public final class Actuator {
  private final ActuatorPlan plan;
  private final Path path;
  private final Rng rng;
  private final Follower[] followers;
  private final double[] shift;
  private final double[] stray;
  private final double[] strayNext;
  private final boolean[] reported;
  private final List<TrueChange> changes = new ArrayList<>();
  private final List<TrueMark> marks = new ArrayList<>();
  private final boolean[] torqueOpen = new boolean[2];
  private final double[] wall;
  private final List<Double> adjusted = new ArrayList<>();
  private int stroke = -1;
  private long initially;

  /** Stands at {@code xTurns} at time 0, play taken up as after closing. */
  public Actuator(ActuatorPlan plan, double xTurns, Rng rng) {
    this(plan, xTurns, xTurns, rng);
  }

  /**
   * The same actuator as another recording left it: where it stands, cams as shifted, at time 0
   * again.
   */
  public Actuator(Actuator before, Rng rng) {
    this(before.plan, before.handwheel(), before.drive(), rng);
    stroke = before.stroke;
    System.arraycopy(before.wall, 0, wall, 0, wall.length);
    System.arraycopy(before.shift, 0, shift, 0, shift.length);
    System.arraycopy(before.stray, 0, stray, 0, stray.length);
    for (int i = 0; i < followers.length; i++) {
      System.arraycopy(
          before.followers[i].above, 0, followers[i].above, 0, followers[i].above.length);
    }
    System.arraycopy(before.torqueOpen, 0, torqueOpen, 0, torqueOpen.length);
    firstState();
  }

  private Actuator(ActuatorPlan plan, double handwheelTurns, double xTurns, Rng rng) {
    this.plan = plan;
    this.rng = rng;
    path = new Path(plan.lostMotionTurns(), handwheelTurns, xTurns);
    shift = new double[plan.cams().size()];
    stray = new double[shift.length];
    strayNext = new double[shift.length];
    wall = new double[] {0, plan.spanTurns()};
    followers =
        plan.contacts().stream()
            .map(
                c -> {
                  CamPlan cam = plan.cam(c.cam());
                  return new Follower(plan.cams().indexOf(cam), cam, c, xTurns);
                })
            .toArray(Follower[]::new);
    reported = new boolean[followers.length];
    firstState();
  }

  private void firstState() {
    initially = 0;
    for (int i = 0; i < followers.length; i++) {
      reported[i] = state(i);
      initially |= reported[i] ? 1L << i : 0;
    }
    torqueState(End.CLOSED, plan.aux().torqueClosing());
    torqueState(End.OPEN, plan.aux().torqueOpening());
  }

  private void torqueState(End end, String channel) {
    boolean closed = !channel.isEmpty() && !torqueOpen(end);
    initially |= closed ? 1L << plan.channels().lastIndexOf(channel) : 0;
  }

  public ActuatorPlan plan() {
    return plan;
  }

  public Path path() {
    return path;
  }

  public double timeS() {
    return path.durationS();
  }

  public double handwheel() {
    return path.lastHandwheel();
  }

  public double drive() {
    return path.lastDrive();
  }

  /** Whether the contact is closed as wired, bounces left out. */
  public boolean state(int contact) {
    boolean sound = followers[contact].closed();
    return switch (plan.contacts().get(contact).wiring()) {
      case SOUND -> sound;
      case INVERTED -> !sound;
      case STUCK_OPEN -> false;
      case STUCK_CLOSED -> true;
    };
  }

  /** A stroke begins: cams that creep or scatter take their new trip points. */
  public void beginStroke() {
    stroke++;
    for (int c = 0; c < shift.length; c++) {
      CamPlan cam = plan.cams().get(c);
      shift[c] -= stray[c];
      if (cam.scatter() != 0 || cam.driftPerStroke() != 0) {
        double scatter = cam.scatter() * rng.gaussian();
        shift[c] = cam.driftPerStroke() * stroke + scatter;
      }
      stray[c] = strayNext[c];
      strayNext[c] = 0;
      shift[c] += stray[c];
    }
  }

  /** In the next stroke, and in that alone, a cam trips somewhere else. */
  public void straysNext(String cam, double byTurns) {
    strayNext[plan.cams().indexOf(plan.cam(cam))] = byTurns;
  }

  /** Something stands in the way: from now on the drive meets its stop of that end here. */
  public void obstruct(End end, double x) {
    wall[index(end)] = x;
  }

  /** How far the drive is wound up beyond the stop (or obstruction) of an end, turns; 0 = free. */
  public double windUp(End end) {
    double beyond = end == End.CLOSED ? wall[0] - drive() : drive() - wall[1];
    return Math.max(0, beyond);
  }

  /** Whether the torque contact of an end is open. */
  public boolean torqueOpen(End end) {
    return torqueOpen[index(end)];
  }

  /** A contactor pulls in or drops out now. */
  public void contactor(End end, ContactState state) {
    String channel = end == End.CLOSED ? plan.aux().motorClosing() : plan.aux().motorOpening();
    aux(channel, state == ContactState.CLOSED, path.durationS());
  }

  /** One step of {@link Path#STEP_S}: the handwheel side is now here, with this speed. */
  public void advance(double handwheelTurns, double turnsPerS) {
    path.append(handwheelTurns, turnsPerS);
    double x = path.lastDrive();
    for (int i = 0; i < followers.length; i++) {
      Follower f = followers[i];
      for (int e = 0; e < f.above.length; e++) {
        if (!f.above[e] && x >= f.rise[e] + shift[f.cam]) {
          f.above[e] = true;
          changed(i, path.crossingInLastSegment(f.rise[e] + shift[f.cam] + plan.lostMotionTurns()));
        } else if (f.above[e] && x <= f.fall[e] + shift[f.cam]) {
          f.above[e] = false;
          changed(i, path.crossingInLastSegment(f.fall[e] + shift[f.cam]));
        }
      }
    }
    followTorque(End.CLOSED, plan.aux().torqueClosing());
    followTorque(End.OPEN, plan.aux().torqueOpening());
  }

  /** Opens at the trip torque; closes again (common practice) once most of it is gone. */
  private void followTorque(End end, String channel) {
    int e = index(end);
    double limit = plan.aux().torqueTripTurns() * (torqueOpen[e] ? 0.3 : 1);
    boolean open = windUp(end) > limit;
    if (open != torqueOpen[e]) {
      torqueOpen[e] = open;
      aux(channel, !open, path.durationS());
    }
  }

  private void aux(String channel, boolean closed, double timeS) {
    int at = plan.channels().lastIndexOf(channel);
    if (!channel.isEmpty()) {
      double speed = path.lastSpeed();
      changes.add(
          new TrueChange(at, closed, timeS, drive(), handwheel(), speed, speed == 0, stroke));
    }
  }

  /** Nothing moves for a while. */
  public void rest(double seconds) {
    for (int k = (int) Math.round(seconds / Path.STEP_S); k > 0; k--) {
      path.append(path.lastHandwheel(), 0);
    }
  }

  /** Somebody turns a cam's adjuster while the valve stands. */
  public void adjust(String cam, double byTurns, double seconds) {
    int c = plan.cams().indexOf(plan.cam(cam));
    double from = shift[c];
    int steps = (int) Math.round(seconds / Path.STEP_S);
    adjusted.add(path.durationS() + seconds);
    for (int k = 1; k <= steps; k++) {
      shift[c] = from + byTurns * k / steps;
      path.append(path.lastHandwheel(), 0);
      double x = path.lastDrive();
      for (int i = 0; i < followers.length; i++) {
        Follower f = followers[i];
        for (int e = 0; f.cam == c && e < f.above.length; e++) {
          boolean flips = f.above[e] ? x <= f.fall[e] + shift[c] : x >= f.rise[e] + shift[c];
          if (flips) {
            f.above[e] = !f.above[e];
            changed(i, path.durationS());
          }
        }
      }
    }
  }

  /** The operator presses a mark now. */
  public void mark(String text) {
    marks.add(new TrueMark(path.durationS(), text));
  }

  private void changed(int contact, double timeS) {
    boolean now = state(contact);
    if (now != reported[contact]) {
      reported[contact] = now;
      double speed = path.handwheelSpeedAt(timeS);
      changes.add(
          new TrueChange(
              contact,
              now,
              timeS,
              path.driveAt(timeS),
              path.handwheelAt(timeS),
              speed,
              speed == 0,
              stroke));
    }
  }

  /** Number of the present stroke. */
  public int stroke() {
    return stroke;
  }

  /** State of every channel (bit = index in the plan's channels) at time 0. */
  public long initially() {
    return initially;
  }

  /** True changes in order of time. */
  public List<TrueChange> changes() {
    List<TrueChange> sorted = new ArrayList<>(changes);
    sorted.sort(Comparator.comparingDouble(TrueChange::timeS));
    return sorted;
  }

  /** Times at which an adjustment was done. */
  public List<Double> adjustedS() {
    return List.copyOf(adjusted);
  }

  /** Marks in order of time. */
  public List<TrueMark> marks() {
    return List.copyOf(marks);
  }

  private static int index(End end) {
    return end == End.CLOSED ? 0 : 1;
  }

  /** What the operator pressed and when. */
  public record TrueMark(double timeS, String text) {}
}
