package tripline.cases;

import java.util.List;
import java.util.function.UnaryOperator;
import tripline.job.End;
import tripline.job.SensorSide;
import tripline.truth.ActuatorPlan;
import tripline.truth.Auxiliaries;
import tripline.truth.Bounce;
import tripline.truth.LoggerPlan;
import tripline.truth.MotorPlan;
import tripline.truth.PoweredStroke;
import tripline.truth.Sensor;

/** Strokes under power, most of them after a hand recording that knows the stops. */
final class MotorCases {
  private static final Sensor SENSOR =
      new Sensor(SensorSide.HANDWHEEL, 1, 0.0005, 0.0003, 0, 0, 12.4, 0);
  private static final double SPAN = 10.12;
  private static final MotorPlan MOTOR = MotorPlan.steady(0.65).withRipple(0.02, 3);
  private static final MotorPlan LONG_COAST = MOTOR.withCoast(0.080, 0.12, 1.5);
  private static final String BY_HAND =
      "Stroked by hand first, then under power with position zero kept. ";

  private MotorCases() {}

  static List<Case> all() {
    return List.of(
        motorRight(),
        motorAlone(),
        motorRegistered(),
        stoppedOnTorque(),
        coastReachesStop(),
        lampsDark(),
        lampsWrong(),
        motorReversed(),
        bypassShort(),
        strokeTimeOff(),
        powerLost(),
        torqueSeated(),
        earlyAndSlow(),
        exchangedAndTorque(),
        chatterAndCoast());
  }

  private static Chart chart() {
    return Chart.of(SENSOR).powered().strokeTime(15);
  }

  private static Site site(Chart chart, long seed) {
    return new Site(chart, SENSOR, SPAN, 0.28, seed).logger(LoggerPlan.plain(100));
  }

  private static Site handFirst(Chart chart, long seed, UnaryOperator<ActuatorPlan> built) {
    return site(chart, seed)
        .built(built)
        .byHand(
            "hand.csv",
            1.5,
            hand -> {
              hand.crank().toStop(End.CLOSED, "closed-stop");
              hand.crank().toStop(End.OPEN, "open-stop");
              hand.crank().toStop(End.CLOSED, "");
            });
  }

  private static Site bothWays(Site site, MotorPlan motor) {
    return site.byMotor("open.csv", 0, motor, m -> m.run(End.OPEN))
        .byMotor("close.csv", 0, motor, m -> m.run(End.CLOSED));
  }

  private static Case motorRight() {
    return bothWays(handFirst(chart(), 201, p -> p), MOTOR)
        .named(
            "motor-right",
            BY_HAND + "Torque contacts and contactors are wired to the logger.",
            "Accepted: both powered strokes stopped on their limit, with margin left to the hard stop.",
            "accept");
  }

  private static Case motorAlone() {
    return site(Chart.of(SENSOR).strokeTime(15), 202)
        .byMotor(
            "motor.csv",
            0.4,
            MOTOR,
            "lost",
            SENSOR,
            m -> {
              m.run(End.OPEN);
              m.run(End.CLOSED);
            })
        .named(
            "motor-alone",
            "Stroked under power only; no hard stop is ever touched and nothing is known from before.",
            "Undecided: coast, lamps, times and positions relative to each other are known, backoff is not.",
            "undecided",
            "stop-unknown");
  }

  private static Case motorRegistered() {
    Sensor again = SENSOR.withOffset(3.7, 0);
    return handFirst(chart(), 203, p -> p)
        .byMotor(
            "motor.csv",
            0,
            MOTOR,
            "lost",
            again,
            m -> {
              m.run(End.OPEN);
              m.run(End.CLOSED);
            })
        .named(
            "motor-registered",
            "Stroked by hand, then the logger was taken off and on again: the powered recording has another zero.",
            "Accepted: the powered recording is registered onto the hand recording by the changes they have in common.",
            "accept");
  }

  private static Case stoppedOnTorque() {
    return handFirst(chart(), 204, p -> p)
        .byMotor("open.csv", 0, MOTOR, m -> m.run(End.OPEN))
        .byMotor(
            "close.csv",
            0,
            MOTOR,
            m -> {
              m.actuator().obstruct(End.CLOSED, 0.85);
              m.run(End.CLOSED);
            })
        .named(
            "stopped-on-torque",
            BY_HAND
                + "On the way to closed something is in the way at about 0.85 turn: the torque contact stops the motor"
                + " before the limit contact changes.",
            "Rejected: stopped on torque at an end that is meant to stop on limit.",
            "reject",
            "stopped-on-torque");
  }

  private static Case coastReachesStop() {
    return bothWays(handFirst(chart(), 205, p -> p), LONG_COAST)
        .named(
            "coast-reaches-stop",
            BY_HAND + "The drive coasts half a turn after its contactor has dropped out.",
            "Rejected: every cam is in tolerance and every stroke stopped on its limit, but the coast uses up the backoff.",
            "reject",
            "coast-reaches-stop");
  }

  private static Case lampsDark() {
    UnaryOperator<ActuatorPlan> apart =
        p ->
            p.withCam("lamp-open", c -> c.moved(0.56 * SPAN - c.closingTrips().get(0)))
                .withCam("lamp-closed", c -> c.moved(0.44 * SPAN - c.closingTrips().get(0)));
    return bothWays(handFirst(chart().lampCams(), 206, apart), MOTOR)
        .named(
            "lamps-dark",
            BY_HAND
                + "The lamps have cams of their own. Each trips within its own wide tolerance, but the closed lamp goes"
                + " out at 44 % and the open lamp comes on at 56 %.",
            "Rejected: between them no lamp is lit.",
            "reject",
            "lamps-dark");
  }

  private static Case lampsWrong() {
    UnaryOperator<ActuatorPlan> late =
        p -> p.withCam("lamp-closed", c -> c.moved(SPAN - 0.2 - c.closingTrips().get(0)));
    return bothWays(handFirst(chart().lampCams(), 220, late), MOTOR)
        .named(
            "lamps-wrong",
            BY_HAND
                + "The lamps have cams of their own. That of the closed lamp trips 0.2 turn before the open stop, beyond"
                + " where the motor stops.",
            "Rejected: both lamps are lit where the motor stops at the open end, and the cam is out of place.",
            "reject",
            "lamps-wrong");
  }

  private static Case motorReversed() {
    UnaryOperator<ActuatorPlan> crossed =
        p -> p.withAuxiliaries(new Auxiliaries("t1", "t2", "m2", "m1", p.aux().torqueTripTurns()));
    return bothWays(handFirst(chart(), 221, crossed), MOTOR)
        .named(
            "motor-reversed",
            BY_HAND
                + "The contactor auxiliaries are crossed: the closing one is in while the valve opens, and the other way round.",
            "Rejected: the valve runs against the contactor that is in.",
            "reject",
            "motor-reversed");
  }

  private static Case bypassShort() {
    UnaryOperator<ActuatorPlan> brief =
        p -> p.withCam("lift", c -> c.moved(0.045 * SPAN - c.closingTrips().get(0)));
    return bothWays(handFirst(chart().bypassTolerance(9), 207, brief), MOTOR)
        .named(
            "bypass-short",
            BY_HAND
                + "The opening bypass trips at 4.5 % of span: within its cam's tolerance, but it has to cover 8 %.",
            "Rejected: the bypass opens before the valve is surely off its seat.",
            "reject",
            "bypass-short");
  }

  private static Case strokeTimeOff() {
    MotorPlan slow = MotorPlan.steady(0.45).withRipple(0.02, 3);
    return bothWays(handFirst(chart(), 208, p -> p), slow)
        .named(
            "stroke-time-off",
            BY_HAND + "The drive runs at 0.45 turn/s instead of 0.65.",
            "Accepted with a caution: stroke time about 21 s instead of 15 s.",
            "accept",
            "stroke-time-off");
  }

  private static Case powerLost() {
    return handFirst(chart(), 209, p -> p)
        .byMotor("open.csv", 0, MOTOR, m -> m.run(End.OPEN, 6, PoweredStroke.Cause.POWER_LOST))
        .byMotor("close.csv", 0, MOTOR, m -> m.run(End.CLOSED))
        .named(
            "power-lost",
            BY_HAND
                + "Power failed in the middle of the opening stroke; closing again went to the limit.",
            "Accepted: the cut-off stroke is told apart from one that stopped on limit or torque.",
            "accept");
  }

  private static Case torqueSeated() {
    Auxiliaries stiff = new Auxiliaries("t1", "t2", "m1", "m2", 0.03);
    return bothWays(handFirst(chart().torqueSeated(), 210, p -> p.withAuxiliaries(stiff)), MOTOR)
        .named(
            "torque-seated",
            BY_HAND
                + "The closed end is seated on torque: the limit contact tells the position, the torque contact stops"
                + " the motor.",
            "Accepted: stopped on torque where that is meant, after the limit contact had changed.",
            "accept");
  }

  private static Case earlyAndSlow() {
    MotorPlan slow = MotorPlan.steady(0.45).withRipple(0.02, 3);
    return bothWays(handFirst(chart(), 211, p -> p.withCam("open", c -> c.moved(-0.3))), slow)
        .named(
            "early-and-slow",
            BY_HAND
                + "Two things at once: the opening limit was set 0.3 turn early, and the drive runs slowly.",
            "Rejected: early cam at the open end, and a caution about the stroke time.",
            "reject",
            "cam-early",
            "stroke-time-off");
  }

  private static Case exchangedAndTorque() {
    return handFirst(
            chart(),
            212,
            p ->
                p.withContact("21-22", c -> c.withChannel("k5"))
                    .withContact("51-52", c -> c.withChannel("k2")))
        .byMotor("open.csv", 0, MOTOR, m -> m.run(End.OPEN))
        .byMotor(
            "close.csv",
            0,
            MOTOR,
            m -> {
              m.actuator().obstruct(End.CLOSED, 0.8);
              m.run(End.CLOSED);
            })
        .named(
            "exchanged-and-torque",
            BY_HAND
                + "Two things at once: the lamp wires are exchanged, and closing is stopped on torque at 0.8 turn.",
            "Rejected: two causes, each under its own name.",
            "reject",
            "contacts-exchanged",
            "stopped-on-torque");
  }

  private static Case chatterAndCoast() {
    return bothWays(
            handFirst(chart(), 213, p -> p).wires(l -> l.wiring().bounce(6, Bounce.CHATTER)),
            LONG_COAST)
        .named(
            "chatter-and-coast",
            BY_HAND
                + "Two things at once: the interlock's contact is burnt and takes tens of milliseconds to settle, and"
                + " the drive coasts half a turn.",
            "Rejected for the coast, with a caution about the contact.",
            "reject",
            "coast-reaches-stop",
            "contact-chatter");
  }
}
