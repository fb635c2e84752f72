package tripline.live;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tripline.job.Acceptance;
import tripline.job.Cam;
import tripline.job.ClosedWhere;
import tripline.job.Contact;
import tripline.job.End;
import tripline.job.EndSetting;
import tripline.job.JobIdentity;
import tripline.job.JobSheet;
import tripline.job.PositionChannel;
import tripline.job.Role;
import tripline.job.Seat;
import tripline.job.SensorSide;
import tripline.job.TravelPlan;
import tripline.job.TripPlan;

/** Valves and loggers of the tests of this package. */
public enum Sites {
  FINE(SensorSide.HANDWHEEL, 1, 0.0005, 0.0005, 0.28, 0.5),
  FALLING(SensorSide.HANDWHEEL, -0.25, 0.002, 0.001, 0.31, 0.5),
  COARSE(SensorSide.HANDWHEEL, 1, 1 / 24.0, 0, 0.25, 0.5),
  NOISY(SensorSide.HANDWHEEL, 1, 0.001, 0.005, 0.3, 0.5),
  STEM(SensorSide.DRIVE, -1 / 6.0, 0.01, 0.002, 0.35, 0.5),
  TIGHT(SensorSide.HANDWHEEL, 1, 0.0005, 0.0005, 0.02, 0.05);

  public static final double SPAN = 10.1;

  private final SensorSide side;
  private final double perUnit;
  private final double count;
  private final double noise;
  private final double lost;
  private final double mostLost;

  Sites(SensorSide side, double perUnit, double count, double noise, double lost, double mostLost) {
    this.side = side;
    this.perUnit = perUnit;
    this.count = count;
    this.noise = noise;
    this.lost = lost;
    this.mostLost = mostLost;
  }

  public double lostMotionTurns() {
    return lost;
  }

  private Rig.Truth truth() {
    return new Rig.Truth(SPAN, lost, 0.03, noise);
  }

  public static JobSheet sheet(Sites site) {
    return sheet(site, 0.15);
  }

  public static JobSheet sheet(Sites site, double mostDifferential) {
    return new JobSheet(
        new JobIdentity("CW-114", "", ""),
        new TravelPlan(
            OptionalDouble.of(10),
            OptionalDouble.of(0.5),
            OptionalDouble.of(site.mostLost),
            OptionalDouble.of(mostDifferential),
            OptionalDouble.empty(),
            OptionalDouble.empty()),
        new PositionChannel(site.side, site.perUnit, site.count, 0, 0, 0, OptionalDouble.empty()),
        10_000_000L,
        new EndSetting(Seat.LIMIT, 0.5, 0.1, 0.01),
        new EndSetting(Seat.LIMIT, 0.5, 0.1, 0.01),
        List.of(
            new Cam("close", List.of()),
            new Cam("quarter", List.of(new TripPlan(End.CLOSED, 25, 2, TripPlan.Unit.PERCENT))),
            new Cam("open", List.of())),
        List.of(
            contact("11-12", "k1", "close", ClosedWhere.OPEN_SIDE, Role.LIMIT_CLOSING),
            contact("23-24", "k2", "close", ClosedWhere.CLOSED_SIDE, Role.SPARE),
            contact("33-34", "k3", "quarter", ClosedWhere.OPEN_SIDE, Role.INTERLOCK),
            contact("41-42", "k4", "open", ClosedWhere.CLOSED_SIDE, Role.LIMIT_OPENING)),
        Acceptance.DEFAULT,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  static Contact contact(String name, String channel, String cam, ClosedWhere closed, Role role) {
    return new Contact(name, channel, cam, closed, role, OptionalDouble.empty());
  }

  public static Rig rig(Sites site, double close, double quarter, double open, long seed) {
    return new Rig(sheet(site), site.truth(), 2, seed, trips(close, quarter, open));
  }

  public static Map<String, Double> trips(double close, double quarter, double open) {
    Map<String, Double> trips = new LinkedHashMap<>();
    trips.put("close", close);
    trips.put("quarter", quarter);
    trips.put("open", open);
    return trips;
  }
}
