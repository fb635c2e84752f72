package tripline.matrix;

import java.util.List;
import tripline.job.End;
import tripline.job.SensorSide;
import tripline.truth.ActuatorPlan;
import tripline.truth.Bounce;
import tripline.truth.ContactPlan;
import tripline.truth.MotorPlan;

/** One maker a finding code; sizes run from faint to gross. */
final class Faults {
  private static final String[] MATED = {"11-12", "21-22", "41-42", "51-52", "73-74"};
  private static final double TOLERANCE = 0.1;

  private Faults() {}

  static List<Fault> all() {
    return List.of(
        new Fault("cam-early", s -> moved(s, 1)),
        new Fault("cam-late", s -> moved(s, -1)),
        new Fault("cam-silent", Faults::silent),
        new Fault("contact-stuck-open", s -> wired(s, ContactPlan.Wiring.STUCK_OPEN)),
        new Fault("contact-stuck-closed", s -> wired(s, ContactPlan.Wiring.STUCK_CLOSED)),
        new Fault("contact-inverted", s -> wired(s, ContactPlan.Wiring.INVERTED)),
        new Fault("contacts-exchanged", Faults::exchanged),
        new Fault("contacts-overlap", Faults::overlap),
        new Fault("contact-chatter", Faults::chatter),
        new Fault("contact-intermittent", Faults::intermittent),
        new Fault("contact-moved-at-rest", Faults::adjusted),
        new Fault("differential-large", Faults::differential),
        new Fault("lost-motion-large", Faults::lostMotion),
        new Fault("trip-drift", Faults::drift),
        new Fault("trip-scatter", Faults::scatter),
        new Fault("stopped-on-torque", Faults::torque),
        new Fault("coast-reaches-stop", Faults::coast),
        new Fault("stroke-time-off", Faults::strokeTime),
        new Fault("lamps-dark", s -> lamps(s, 0.5, 0.5)),
        new Fault("lamps-wrong", Faults::lampsWrong),
        new Fault("bypass-short", Faults::bypass),
        new Fault("span-off", Faults::span),
        new Fault("stop-unknown", Faults::stopUnknown),
        new Fault("motor-reversed", Faults::reversed),
        new Fault("samples-lost", Faults::samplesLost),
        new Fault("position-gap", Faults::gap),
        new Fault("position-frozen", Faults::frozen),
        new Fault("position-slip", Faults::slip),
        new Fault("time-repeated", Faults::repeated),
        new Fault("time-backwards", Faults::steppedBack));
  }

  static Specimen healthy(Setup s) {
    return Specimen.of(Setup.byMotor(s.byHand(s.site()), Setup.MOTOR), 1);
  }

  /** {@code sign} +1: earlier on the approach of its end. */
  private static Specimen moved(Setup s, int sign) {
    boolean open = s.rng.chance(0.5);
    double most = sign > 0 ? 0.6 : 0.38;
    double by = sign * s.rng.uniform(1.3 * TOLERANCE, most);
    String cam = open ? "open" : "close";
    s.built = p -> p.withCam(cam, c -> c.moved(open ? -by : by));
    return Specimen.of(
        Setup.byMotor(s.byHand(s.site()), Setup.MOTOR), Math.abs(by) / (3 * TOLERANCE));
  }

  private static Specimen silent(Setup s) {
    String cam = List.of("close", "open", "lift", "drop").get(s.rng.below(4));
    boolean above = s.rng.chance(0.5);
    s.built = p -> p.withCam(cam, c -> c.moved(above ? 1000 : -1000));
    return Specimen.of(s.byHand(s.site()), 1);
  }

  private static Specimen wired(Setup s, ContactPlan.Wiring wiring) {
    String name = MATED[s.rng.below(MATED.length)];
    s.built = p -> p.withContact(name, c -> c.withWiring(wiring));
    return Specimen.of(s.byHand(s.site()), 1);
  }

  private static Specimen exchanged(Setup s) {
    String[][] pairs = {
      {"11-12", "41-42"}, {"21-22", "51-52"}, {"11-12", "51-52"}, {"33-34", "63-64"},
      {"73-74", "81-82"}, {"11-12", "73-74"}, {"33-34", "11-12"}, {"63-64", "73-74"},
      {"41-42", "33-34"}
    };
    String[] pair = pairs[s.rng.below(pairs.length)];
    s.built =
        p -> {
          String first = channel(p, pair[0]);
          String second = channel(p, pair[1]);
          return p.withContact(pair[0], c -> c.withChannel(second))
              .withContact(pair[1], c -> c.withChannel(first));
        };
    return Specimen.of(s.byHand(s.site()), 1);
  }

  private static String channel(ActuatorPlan plan, String contact) {
    return plan.contacts().stream()
        .filter(c -> c.name().equals(contact))
        .findFirst()
        .orElseThrow()
        .channel();
  }

  /** The hysteresis must hold what the making contact comes too soon, or it would hunt. */
  private static Specimen overlap(Setup s) {
    double turns = s.rng.uniform(0.004, 0.055);
    s.built =
        p ->
            p.withCam("half", c -> c.withDifferential(0.02 + 2 * turns))
                .withContact("73-74", c -> c.withMakeDelay(-turns))
                .withContact("81-82", c -> c.withMakeDelay(0));
    return Specimen.of(s.byHand(s.plainSite()), turns / 0.8 / (3 * s.scanS()));
  }

  private static Specimen chatter(Setup s) {
    int contact = s.rng.below(8);
    double mean = s.rng.uniform(0.03, 0.1);
    Bounce bounce = new Bounce(mean, 1.5 * mean, 0.002);
    s.wires = l -> l.wiring().bounce(contact, bounce);
    return Specimen.of(s.byHand(s.site()), mean / (0.02 + 3 * s.scanS()));
  }

  private static Specimen intermittent(Setup s) {
    int contact = s.rng.below(7);
    double length = s.rng.uniform(0.2, 6) * s.scanS();
    double at = s.rng.uniform(0.4, 0.6);
    s.wires =
        l -> {
          double t = midTravel(l.actuator(), at);
          l.wiring().glitch(contact, t, length);
        };
    s.chart = c -> c;
    return Specimen.of(s.byHand(s.site()), length / (3 * s.scanS()));
  }

  /** A time at which the drive is about 28 % open on its way. */
  private static double midTravel(tripline.truth.Actuator actuator, double share) {
    double end = actuator.timeS();
    double wanted = actuator.plan().spanTurns() * (0.22 + 0.1 * share);
    for (double t = 0; t < end; t += 0.01) {
      if (actuator.path().driveAt(t) > wanted
          && Math.abs(actuator.path().driveSpeedAt(t)) > 0.1
          && t > 0.2 * end) {
        return t;
      }
    }
    throw new IllegalStateException("never there");
  }

  private static Specimen adjusted(Setup s) {
    double by = s.rng.uniform(0.1, 0.3);
    s.built = p -> p.withCam("close", c -> c.moved(by));
    return Specimen.of(
        s.site()
            .byHand(
                "hand.csv",
                2,
                hand -> {
                  hand.crank().toStop(End.CLOSED, "closed-stop");
                  hand.crank().toStop(End.OPEN, "open-stop");
                  hand.crank().toStop(End.CLOSED, "");
                  hand.crank().to(1.2);
                  hand.crank().to(0.52 + by / 2);
                  hand.actuator().rest(1.5);
                  hand.actuator().adjust("close", -by, 4);
                  hand.actuator().rest(1.5);
                  hand.crank().toStop(End.OPEN, "");
                  hand.crank().toStop(End.CLOSED, "");
                }),
        1);
  }

  private static Specimen differential(Setup s) {
    double limit = 0.15;
    double d = limit + s.rng.uniform(0.05, 0.4);
    String cam = List.of("lift", "drop").get(s.rng.below(2));
    // The trip point that is judged stays where it is.
    double back = cam.equals("drop") ? -d : 0;
    s.built = p -> p.withCam(cam, c -> c.withDifferential(d).moved(back));
    return Specimen.of(s.byHand(s.site()), (d - limit) / 0.15);
  }

  private static Specimen lostMotion(Setup s) {
    double over = s.rng.uniform(0.01, 0.4);
    s.lostMotion = 0.5 + over;
    return Specimen.of(
        s.byHand(s.site()), s.kind.sensor().side() == SensorSide.DRIVE ? 0 : over / 0.1);
  }

  private static Specimen drift(Setup s) {
    double per = s.rng.uniform(0.005, 0.05) * (s.rng.chance(0.5) ? 1 : -1);
    String cam = List.of("close", "open").get(s.rng.below(2));
    s.pairs = 5;
    s.built = p -> p.withCam(cam, c -> c.withDrift(per));
    return Specimen.of(s.byHand(s.site()), Math.abs(per) * 10 / 0.3);
  }

  private static Specimen scatter(Setup s) {
    double sd = s.rng.uniform(0.02, 0.15);
    String cam = List.of("close", "open").get(s.rng.below(2));
    s.pairs = 4;
    s.built = p -> p.withCam(cam, c -> c.withScatter(sd));
    return Specimen.of(
        s.byHand(s.site()), sd / 0.1, "cam-early", "cam-late", "trip-drift", "differential-large");
  }

  static Specimen torque(Setup s) {
    End end = s.rng.chance(0.5) ? End.CLOSED : End.OPEN;
    double from = s.rng.uniform(0.8, 4);
    double wall = end == End.CLOSED ? from : s.span - from;
    return Specimen.of(
        s.byHand(s.site())
            .byMotor(
                "first.csv",
                0,
                Setup.MOTOR,
                m -> {
                  m.run(End.OPEN);
                  if (end == End.OPEN) {
                    m.run(End.CLOSED);
                  }
                })
            .byMotor(
                "held.csv",
                0,
                Setup.MOTOR,
                m -> {
                  m.actuator().obstruct(end, wall);
                  m.run(end);
                }),
        1);
  }

  private static Specimen coast(Setup s) {
    MotorPlan runsOn = Setup.MOTOR.withCoast(0.080, s.rng.uniform(0.05, 0.12), 1.5);
    return Specimen.of(Setup.byMotor(s.byHand(s.site()), runsOn), 1);
  }

  private static Specimen strokeTime(Setup s) {
    double speed = s.rng.chance(0.5) ? s.rng.uniform(0.3, 0.5) : s.rng.uniform(0.85, 1.1);
    MotorPlan motor = MotorPlan.steady(speed).withRipple(0.02, 3);
    double excess = Math.abs(9 / speed - 15) - 2;
    return Specimen.of(Setup.byMotor(s.byHand(s.site()), motor), excess / 2);
  }

  private static Specimen lamps(Setup s, double middle, double spread) {
    double half = s.rng.uniform(0.01, 0.06) * spread * 2;
    s.chart = c -> c.lampCams();
    s.built =
        p ->
            p.withCam("lamp-open", c -> c.moved((middle + half) * s.span - c.closingTrips().get(0)))
                .withCam(
                    "lamp-closed",
                    c -> c.moved((middle - half) * s.span - c.closingTrips().get(0)));
    return Specimen.of(s.byHand(s.site()), half / 0.02);
  }

  /** The closed lamp's cam trips beyond where the opening limit stops the motor. */
  private static Specimen lampsWrong(Setup s) {
    s.chart = c -> c.lampCams();
    s.built = p -> p.withCam("lamp-closed", c -> c.moved(s.span - 0.2 - c.closingTrips().get(0)));
    return Specimen.of(Setup.byMotor(s.byHand(s.site()), Setup.MOTOR), 1);
  }

  private static Specimen bypass(Setup s) {
    double percent = s.rng.uniform(3.5, 7.5);
    s.chart = c -> c.bypassTolerance(9);
    s.built =
        p -> p.withCam("lift", c -> c.moved(percent / 100 * s.span - c.closingTrips().get(0)));
    return Specimen.of(s.byHand(s.site()), (8 - percent) * s.span / 100 / 0.1);
  }

  private static Specimen span(Setup s) {
    double off = s.rng.uniform(0.52, 1.2) * (s.rng.chance(0.5) ? 1 : -1);
    s.span = Setup.SHEET_SPAN + off;
    return Specimen.of(s.byHand(s.site()), (Math.abs(off) - 0.5) / 0.1);
  }

  private static Specimen stopUnknown(Setup s) {
    return Specimen.of(
        s.site()
            .byMotor(
                "motor.csv",
                0.4,
                Setup.MOTOR,
                m -> {
                  m.run(End.OPEN);
                  m.run(End.CLOSED);
                }),
        1);
  }

  /** Contactor auxiliaries that belong to the other direction. */
  private static Specimen reversed(Setup s) {
    s.built =
        p ->
            p.withAuxiliaries(
                new tripline.truth.Auxiliaries("t1", "t2", "m2", "m1", p.aux().torqueTripTurns()));
    return Specimen.of(Setup.byMotor(s.byHand(s.site()), Setup.MOTOR), 1);
  }

  private static Specimen samplesLost(Setup s) {
    double length = s.rng.uniform(0.1, 2);
    s.logger = l -> l.withLosses(0, 0, s.rng.uniform(12, 20), length);
    return Specimen.of(s.byHand(s.site()), 1);
  }

  private static Specimen gap(Setup s) {
    double from = s.rng.uniform(12, 20);
    double length = s.rng.uniform(0.3, 2);
    return Specimen.of(s.byHand(s.site()), 1)
        .spoilt(sink -> new Spoil(sink, Spoil.How.GAP, from, from + length, 0));
  }

  private static Specimen frozen(Setup s) {
    double from = s.rng.uniform(8, 14);
    return Specimen.of(s.byHand(s.site()), 1)
        .spoilt(sink -> new Spoil(sink, Spoil.How.FROZEN, from, from + 12, 0));
  }

  private static Specimen slip(Setup s) {
    double turns = s.rng.uniform(0.3, 2) * (s.rng.chance(0.5) ? 1 : -1);
    double units = turns / s.kind.sensor().turnsPerUnit();
    return Specimen.of(s.byHand(s.site()), Math.abs(turns) / 0.5)
        .spoilt(sink -> new Spoil(sink, Spoil.How.SLIP, 30, 1e9, units));
  }

  private static Specimen repeated(Setup s) {
    s.logger = l -> l.withLosses(0, 0.001, Double.NaN, 0);
    return Specimen.of(s.byHand(s.site()), 1);
  }

  private static Specimen steppedBack(Setup s) {
    double at = s.rng.uniform(8, 30);
    double by = Math.exp(s.rng.uniform(Math.log(2 * s.scanS()), Math.log(3600)));
    s.logger = l -> l.withStepBack(at, by);
    return Specimen.of(s.byHand(s.site()), 1);
  }
}
