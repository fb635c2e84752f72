package tripline.develop;

import static tripline.job.ClosedWhere.CLOSED_SIDE;
import static tripline.job.ClosedWhere.INSIDE;
import static tripline.job.ClosedWhere.OPEN_SIDE;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tripline.job.Acceptance;
import tripline.job.Cam;
import tripline.job.ClosedWhere;
import tripline.job.Contact;
import tripline.job.EndSetting;
import tripline.job.JobIdentity;
import tripline.job.JobSheet;
import tripline.job.PositionChannel;
import tripline.job.Role;
import tripline.job.Seat;
import tripline.job.SensorSide;
import tripline.job.TravelPlan;
import tripline.job.TripPlan;
import tripline.truth.ActuatorPlan;
import tripline.truth.Auxiliaries;
import tripline.truth.CamPlan;
import tripline.truth.ContactPlan;

/** The valve of the tests of this package: its sheet and the actuator behind it. */
final class Demo {
  static final double SPAN = 12;
  static final double LOST_MOTION = 0.2;
  static final double STOP_U = 0.01;

  private Demo() {}

  static ActuatorPlan actuator() {
    return new ActuatorPlan(
        SPAN,
        LOST_MOTION,
        List.of(
            CamPlan.at("close", 0.5, 0),
            CamPlan.at("open", SPAN - 0.5, 0.05),
            CamPlan.at("quarter", 3, 0.03),
            new CamPlan("band", List.of(5.0, 7.0), 0.02, 0, 0)),
        List.of(
            contact("21-22", "k1", "close", OPEN_SIDE, Role.LIMIT_CLOSING),
            contact("23-24", "k2", "close", CLOSED_SIDE, Role.BYPASS_OPENING),
            contact("31-32", "k3", "open", CLOSED_SIDE, Role.LIMIT_OPENING),
            contact("33-34", "k4", "open", OPEN_SIDE, Role.LAMP_OPEN),
            contact("43-44", "k5", "quarter", OPEN_SIDE, Role.INTERLOCK),
            contact("53-54", "k6", "band", INSIDE, Role.SPARE)),
        Auxiliaries.ALL);
  }

  private static ContactPlan contact(
      String name, String channel, String cam, ClosedWhere closed, Role role) {
    return new ContactPlan(name, channel, cam, closed, role, 0, ContactPlan.Wiring.SOUND);
  }

  static JobSheet sheet() {
    return sheet(new PositionChannel(SensorSide.HANDWHEEL, 1, 0, 0, 0, 0, OptionalDouble.empty()));
  }

  static JobSheet sheet(PositionChannel position) {
    return sheet(position, Seat.LIMIT, actuator());
  }

  static JobSheet sheet(PositionChannel position, Seat seat, ActuatorPlan plan) {
    List<Contact> contacts = new ArrayList<>();
    for (ContactPlan c : plan.contacts()) {
      contacts.add(
          new Contact(
              c.name(), c.channel(), c.cam(), c.closed(), c.role(), OptionalDouble.empty()));
    }
    return new JobSheet(
        new JobIdentity("CW-114", "", ""),
        new TravelPlan(
            OptionalDouble.of(SPAN),
            OptionalDouble.of(0.5),
            OptionalDouble.of(0.3),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty()),
        position,
        10_000_000L,
        new EndSetting(seat, 0.5, 0.1, STOP_U),
        new EndSetting(seat, 0.5, 0.1, STOP_U),
        List.of(
            new Cam("close", List.of()),
            new Cam("open", List.of()),
            new Cam("quarter", List.of(percent(25))),
            new Cam("band", List.of(percent(42), percent(58)))),
        contacts,
        Acceptance.DEFAULT,
        name(plan.aux().torqueClosing()),
        name(plan.aux().torqueOpening()),
        name(plan.aux().motorClosing()),
        name(plan.aux().motorOpening()));
  }

  private static Optional<String> name(String channel) {
    return channel.isEmpty() ? Optional.empty() : Optional.of(channel);
  }

  private static TripPlan percent(double percent) {
    return new TripPlan(tripline.job.End.CLOSED, percent, 2, TripPlan.Unit.PERCENT);
  }
}
