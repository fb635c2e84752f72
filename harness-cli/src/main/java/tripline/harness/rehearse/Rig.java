package tripline.harness.rehearse;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tripline.harness.rehearse.logger.Inputs;
import tripline.harness.rehearse.logger.LoggerMake;
import tripline.harness.rehearse.logger.VirtualLogger;
import tripline.harness.rehearse.valve.Chance;
import tripline.harness.rehearse.valve.Mover;
import tripline.harness.rehearse.valve.ValveBuild;
import tripline.harness.rehearse.valve.VirtualValve;

/** Valve, logger and cable, and whoever moves the valve. Its time passes a step at a time. */
public final class Rig {
  /** One step, ns. */
  public static final long STEP_NS = VirtualValve.STEP_NS;

  private final VirtualValve valve;
  private final VirtualLogger logger;
  private final Cable cable;
  private @Nullable Mover mover;

  /** Built, at rest, its logger switched on. */
  public Rig(RigPlan plan) {
    Chance chance = new Chance(plan.seed());
    ValveBuild build = ValveBuild.of(plan.sheet(), plan.setting(), plan.seed());
    valve = new VirtualValve(build, plan.seed());
    LoggerMake make =
        RigLogger.make(
            build, plan.kit(), plan.talks(), chance.split("session").bits() & 0xffff_ffffL);
    long upSinceNs = -Math.round(plan.uptimeS() * 1e9);
    logger =
        new VirtualLogger(
            make, inputs(valve), () -> StrokesBefore.of(build, make, plan.seed()), upSinceNs, 0);
    cable = new Cable(plan.baud(), chance.split("cable"));
  }

  /** A valve's terminals. */
  static Inputs inputs(VirtualValve valve) {
    return new Inputs() {
      @Override
      public int countAt(long timeNs) {
        return valve.countAt(timeNs);
      }

      @Override
      public long closedAt(long timeNs) {
        return valve.closedAt(timeNs);
      }

      @Override
      public int edges() {
        return valve.edges();
      }

      @Override
      public long edgeNs(int edge) {
        return valve.edgeNs(edge);
      }

      @Override
      public int edgeContact(int edge) {
        return valve.edgeChannel(edge);
      }
    };
  }

  /** One step of {@value #STEP_NS} ns. */
  public void step() {
    if (mover == null || !mover.step(valve)) {
      mover = null;
      valve.rest();
    }
    logger.advance(valve.nowNs());
  }

  /** Its time, ns. */
  public long nowNs() {
    return valve.nowNs();
  }

  /** The valve. */
  public VirtualValve valve() {
    return valve;
  }

  /** The logger. */
  public VirtualLogger logger() {
    return logger;
  }

  Cable cable() {
    return cable;
  }

  /** Whether something moves the valve or works on it. */
  public boolean moving() {
    return mover != null;
  }

  /** From now on this moves the valve. */
  public void move(Mover next) {
    mover = next;
  }

  /** Whoever moves it lets go. */
  public void halt() {
    if (mover != null) {
      mover.stop();
    }
  }

  /** What the host sent. */
  public void receive(byte[] bytes, int length) {
    cable.toLogger(logger, bytes, length);
  }

  /** What goes to the host, as far as there is room for it; returns how many bytes. */
  public int send(byte[] into, int room) {
    return cable.fromLogger(logger, into, room, nowNs());
  }

  /** Channel names, in the order of their bits. */
  public List<String> channels() {
    return valve.channels();
  }
}
