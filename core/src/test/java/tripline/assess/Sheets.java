package tripline.assess;

import java.util.List;
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

/** Job sheets of a fictional waterworks; terminal marks by EN 50013. */
public final class Sheets {
  public static final double SPAN = 31;

  private Sheets() {}

  public static JobSheet standard() {
    return standard(Seat.LIMIT, Seat.LIMIT);
  }

  public static JobSheet standard(Seat closed, Seat open) {
    return standard(closed, open, Acceptance.DEFAULT);
  }

  /** The same sheet with what it asks of an acceptance. */
  public static JobSheet asking(Acceptance acceptance) {
    return standard(Seat.LIMIT, Seat.LIMIT, acceptance);
  }

  private static JobSheet standard(Seat closed, Seat open, Acceptance acceptance) {
    return new JobSheet(
        new JobIdentity("CW-114", "Cooling-water return isolation", "4471-C"),
        new TravelPlan(
            OptionalDouble.of(SPAN),
            OptionalDouble.of(0.5),
            OptionalDouble.of(0.3),
            OptionalDouble.of(0.15),
            OptionalDouble.of(30.2),
            OptionalDouble.of(3)),
        new PositionChannel(SensorSide.HANDWHEEL, 1, 0.0005, 0, 0, 0, OptionalDouble.empty()),
        10_000_000,
        new EndSetting(closed, 0.5, 0.1, 0.01),
        new EndSetting(open, 0.5, 0.1, 0.01),
        List.of(
            new Cam("close", List.of()),
            new Cam("open", List.of(turns(End.OPEN, 0.5, 0.1))),
            new Cam("quarter", List.of(percent(End.CLOSED, 25, 2))),
            new Cam("band", List.of(percent(End.CLOSED, 40, 2), percent(End.OPEN, 40, 2)))),
        List.of(
            contact("23-24", "k2", "close", ClosedWhere.CLOSED_SIDE, Role.BYPASS_OPENING, 1.5),
            contact("21-22", "k1", "close", ClosedWhere.OPEN_SIDE, Role.LIMIT_CLOSING, 0),
            contact("11-12", "k3", "open", ClosedWhere.CLOSED_SIDE, Role.LIMIT_OPENING, 0),
            contact("13-14", "k4", "open", ClosedWhere.OPEN_SIDE, Role.BYPASS_CLOSING, 1.5),
            contact("33-34", "k5", "close", ClosedWhere.OPEN_SIDE, Role.LAMP_OPEN, 0),
            contact("31-32", "k6", "open", ClosedWhere.CLOSED_SIDE, Role.LAMP_CLOSED, 0),
            contact("41-42", "k7", "quarter", ClosedWhere.CLOSED_SIDE, Role.INTERLOCK, 0),
            contact("53-54", "k8", "band", ClosedWhere.INSIDE, Role.SPARE, 0)),
        acceptance,
        Optional.of("t1"),
        Optional.of("t2"),
        Optional.of("m1"),
        Optional.of("m2"));
  }

  private static Contact contact(
      String name, String channel, String cam, ClosedWhere closed, Role role, double covers) {
    OptionalDouble share = covers > 0 ? OptionalDouble.of(covers) : OptionalDouble.empty();
    return new Contact(name, channel, cam, closed, role, share);
  }

  static TripPlan turns(End from, double distance, double tolerance) {
    return new TripPlan(from, distance, tolerance, TripPlan.Unit.TURNS);
  }

  static TripPlan percent(End from, double distance, double tolerance) {
    return new TripPlan(from, distance, tolerance, TripPlan.Unit.PERCENT);
  }
}
