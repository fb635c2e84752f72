package tripline.cases;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import tripline.job.End;
import tripline.job.SensorSide;
import tripline.truth.ActuatorPlan;
import tripline.truth.ContactPlan;
import tripline.truth.LoggerPlan;
import tripline.truth.Sensor;

/** Strokes by hand. */
final class HandCases {
  private static final Sensor FINE =
      new Sensor(SensorSide.HANDWHEEL, 1, 0.0005, 0.0003, 0, 0, 12.4, 0);
  private static final String ACCEPTED =
      "Everything is right: accepted, nothing to report but notes.";

  private HandCases() {}

  static List<Case> all() {
    return List.of(
        rightFine(),
        rightCoarse(),
        rightNoisy(),
        rightSparse(),
        early(),
        late(),
        silent(),
        stuck(),
        exchanged(),
        drift(),
        adjusted(),
        unplugged(),
        lastYear(),
        thisYear());
  }

  private static void bothStops(Site.Hand hand) {
    hand.crank().toStop(End.CLOSED, "closed-stop");
    hand.crank().toStop(End.OPEN, "open-stop");
    hand.crank().toStop(End.CLOSED, "");
  }

  private static Site fine(long seed) {
    return new Site(Chart.of(FINE), FINE, 10.12, 0.28, seed);
  }

  private static Case rightFine() {
    return new Site(
            Chart.of(FINE).valve("FW-207", "Filter inlet isolation, DN 500 wedge gate valve", 31),
            FINE,
            31.14,
            0.31,
            101)
        .logger(LoggerPlan.plain(200))
        .byHand("hand.csv", 2, HandCases::bothStops)
        .named(
            "right-fine",
            "A long valve set right, stroked by hand from stop to stop and back with a fine sensor on the handwheel,"
                + " 200 rows a second. The technician pauses to change grip and turns back a little now and then.",
            ACCEPTED,
            "accept");
  }

  private static Case rightCoarse() {
    Sensor coarse = new Sensor(SensorSide.HANDWHEEL, 1 / 24.0, 1, 0, 0, 0, 300, 0);
    return new Site(Chart.of(coarse), coarse, 10.05, 0.3, 102)
        .byHand("hand.csv", 2, HandCases::bothStops)
        .named(
            "right-coarse",
            "Set right; the encoder has 24 counts a handwheel turn, so that the tolerance of a backoff is five counts"
                + " wide.",
            ACCEPTED,
            "accept");
  }

  private static Case rightNoisy() {
    Sensor stem = new Sensor(SensorSide.DRIVE, -1 / 6.0, 0.01, 0.06, 0, 0, 81.5, 0);
    return new Site(
            Chart.of(stem).valve("RW-031", "Raw-water intake, DN 250 gate valve", 10).band(),
            stem,
            9.93,
            0.35,
            103)
        .byHand("hand.csv", 2, HandCases::bothStops)
        .named(
            "right-noisy",
            "Set right; a potentiometer on the stem (Tr 36x6: 6 mm a turn, falling while opening) with 0.06 mm of noise,"
                + " a hundredth of a turn. The interlock is a closed window from 40 to 60 %.",
            ACCEPTED + " Lost motion does not show on the drive side.",
            "accept");
  }

  private static Case rightSparse() {
    Sensor encoder = new Sensor(SensorSide.HANDWHEEL, 1, 0.005, 0, 0, 0, 7, 0);
    return new Site(Chart.of(encoder), encoder, 10.08, 0.26, 104)
        .logger(LoggerPlan.plain(1000).with(LoggerPlan.Writes.CHANGES_ONLY))
        .byHand("hand.csv", 2, HandCases::bothStops)
        .named(
            "right-sparse",
            "Set right; the logger scans 1000 times a second and writes only what changed: most cells are empty, and"
                + " while the valve stands there are no rows at all.",
            ACCEPTED,
            "accept");
  }

  private static Case early() {
    return fine(105)
        .built(plan -> plan.withCam("close", cam -> cam.moved(0.27)))
        .byHand("hand.csv", 2, HandCases::bothStops)
        .named(
            "early",
            "The closing limit's cam was set a quarter of a turn too far open.",
            "Rejected: the cam trips early at the closed end, backoff about 0.77 instead of 0.50; the lamp contact on the"
                + " same cam gives no finding of its own.",
            "reject",
            "cam-early");
  }

  private static Case late() {
    return fine(106)
        .built(plan -> plan.withCam("open", cam -> cam.moved(0.25)))
        .byHand("hand.csv", 2, HandCases::bothStops)
        .named(
            "late",
            "The opening limit's cam was set a quarter of a turn too near the open stop.",
            "Rejected: the cam trips late at the open end, backoff about 0.25 instead of 0.50.",
            "reject",
            "cam-late");
  }

  private static Case silent() {
    return fine(107)
        .built(plan -> plan.withCam("half", cam -> cam.moved(40)))
        .byHand("hand.csv", 2, HandCases::bothStops)
        .named(
            "silent",
            "The gear of the half-way cam is not engaged: it never turns.",
            "Rejected: one silent cam, and nothing about its two contacts one by one.",
            "reject",
            "cam-silent");
  }

  private static Case stuck() {
    return fine(108)
        .built(
            plan -> plan.withContact("21-22", c -> c.withWiring(ContactPlan.Wiring.STUCK_CLOSED)))
        .byHand("hand.csv", 2, HandCases::bothStops)
        .named(
            "stuck",
            "The open lamp's contact is welded; its mate on the same cam works.",
            "Rejected: the contact is stuck closed. That the lamp is therefore wrong at the closed end is no second"
                + " cause.",
            "reject",
            "contact-stuck-closed");
  }

  private static Case exchanged() {
    return fine(109)
        .built(HandCases::exchange)
        .byHand("hand.csv", 2, HandCases::bothStops)
        .named(
            "exchanged",
            "The wires of the two lamp contacts were exchanged at the terminal strip.",
            "Rejected: channels k2 and k5 exchanged; neither inverted contacts nor cams out of place.",
            "reject",
            "contacts-exchanged");
  }

  private static ActuatorPlan exchange(ActuatorPlan plan) {
    return plan.withContact("21-22", c -> c.withChannel("k5"))
        .withContact("51-52", c -> c.withChannel("k2"));
  }

  private static Case drift() {
    return fine(110)
        .logger(LoggerPlan.plain(50))
        .built(plan -> plan.withCam("close", cam -> cam.moved(0.1).withDrift(-0.018)))
        .byHand(
            "hand.csv",
            2,
            hand -> {
              hand.crank().toStop(End.CLOSED, "closed-stop");
              for (int k = 0; k < 5; k++) {
                hand.crank().toStop(End.OPEN, k == 0 ? "open-stop" : "");
                hand.crank().toStop(End.CLOSED, "");
              }
            })
        .named(
            "drift",
            "The gear of the closing limit's cam did not re-engage: its trip point creeps about 0.04 turn a cycle toward"
                + " closed while the valve is stroked six times.",
            "Rejected: the trip point drifts in one direction beyond scatter.",
            "reject",
            "trip-drift");
  }

  private static Case adjusted() {
    return fine(111)
        .built(plan -> plan.withCam("close", cam -> cam.moved(0.33)))
        .byHand(
            "hand.csv",
            2,
            hand -> {
              hand.crank().toStop(End.CLOSED, "closed-stop");
              hand.crank().toStop(End.OPEN, "open-stop");
              hand.crank().toStop(End.CLOSED, "");
              hand.crank().to(1.2);
              hand.crank().to(0.55);
              hand.actuator().rest(1);
              hand.actuator().adjust("close", -0.33, 4);
              hand.actuator().mark("adjusted");
              hand.actuator().rest(1);
              hand.crank().toStop(End.OPEN, "");
              hand.crank().toStop(End.CLOSED, "");
            })
        .named(
            "adjusted",
            "Found with the closing limit a third of a turn early, put right in the middle of the recording (contacts"
                + " change while the valve stands, mark `adjusted`), and stroked again both ways.",
            "Accepted as left; as found the closing limit was early. The contacts that changed at rest are reported.",
            "accept",
            "contact-moved-at-rest")
        .compared(new Case.Compared(Optional.empty(), Map.of("close", -0.33)));
  }

  private static Case unplugged() {
    Cable cable = new Cable();
    return fine(118)
        .byHandOver(
            cable,
            "hand.bin",
            2,
            hand -> {
              hand.crank().toStop(End.CLOSED, "closed-stop");
              hand.crank().to(2.2);
              double outS = hand.actuator().timeS();
              hand.crank().to(3.6);
              cable.pull(outS, hand.actuator().timeS());
              hand.crank().toStop(End.OPEN, "open-stop");
              hand.crank().toStop(End.CLOSED, "");
            })
        .named(
            "unplugged",
            "Set right, recorded live: the file is a capture of the logger's own bytes. The closed stop is marked with"
                + " the logger's button, the open stop at the host. On the way up somebody trips over the cable: the"
                + " valve goes on from 2.2 to 3.6 turns, where no contact changes, until it is plugged in again, and"
                + " the capture goes on in the same file.",
            "Accepted; the samples that are missing are reported.",
            "accept",
            "samples-lost");
  }

  private static Site bypassValve(long seed, Chart chart) {
    return new Site(
        chart.valve("CW-118", "Cooling-water bypass isolation, DN 200 wedge gate valve", 10),
        FINE,
        9.93,
        0.22,
        seed);
  }

  private static Case lastYear() {
    return bypassValve(116, Chart.of(FINE))
        .byHand("hand.csv", 2, HandCases::bothStops)
        .named(
            "last-year",
            "A valve set right, stroked by hand from stop to stop and back; the result is kept.",
            "Accepted.",
            "accept");
  }

  private static Case thisYear() {
    double crept = 0.06;
    return bypassValve(117, Chart.of(FINE).bypassTolerance(4))
        .built(
            unused ->
                bypassValve(116, Chart.of(FINE)).plan().withCam("half", cam -> cam.moved(crept)))
        .byHand("hand.csv", 2, HandCases::bothStops)
        .named(
            "this-year",
            "The valve of last-year a year later: the half-way cam has crept by 0.06 turn, well within its"
                + " tolerance, and nothing else has moved. The stops were touched anew, and the sheet allows the"
                + " bypass cams 4 per cent instead of 3.",
            "Accepted; beside last year's result the half-way cam has moved, and no other.",
            "accept")
        .compared(new Case.Compared(Optional.of("last-year"), Map.of("half", crept)));
  }
}
