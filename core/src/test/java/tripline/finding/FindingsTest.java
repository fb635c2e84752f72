package tripline.finding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import tripline.assess.Assessment;
import tripline.assess.Bench;
import tripline.assess.Sheets;
import tripline.develop.Stroke;
import tripline.develop.Stroke.StoppedBy;
import tripline.develop.Trip;
import tripline.job.Direction;
import tripline.job.JobSheet;
import tripline.job.Seat;
import tripline.job.TravelPlan;
import tripline.measure.Estimate;
import tripline.measure.Shape;
import tripline.reduce.Change;
import tripline.reduce.Disturbance;
import tripline.reduce.Loss;
import tripline.reduce.Place;
import tripline.reduce.ReadingFault;
import tripline.sample.ContactState;
import tripline.sample.Drive;

/** Every finding: it fires, it does not just below its limit, and one cause gives one finding. */
class FindingsTest {

  private static List<Finding> of(Bench bench) {
    return Findings.of(Assessment.of(bench.build()));
  }

  private static List<Code> codes(Bench bench) {
    return of(bench).stream().map(Finding::code).toList();
  }

  private static Bench motor() {
    return Bench.standard().motor(1);
  }

  @Test
  void nothingIsSaidOfASettingThatIsRight() {
    assertThat(codes(motor())).isEmpty();
  }

  @Test
  void camEarlyAndLate() {
    List<Finding> early = of(motor().shiftCam("close", 0.23));
    assertThat(early).extracting(Finding::code).containsExactly(Code.CAM_EARLY);
    assertThat(early.get(0).severity()).isEqualTo(Severity.FAULT);
    assertThat(early.get(0).message())
        .isEqualTo(
            "Cam close trips 0.23 turn too early while closing: 0.73 ± 0.02 turn from the closed"
                + " stop instead of 0.50 turn ± 0.10 turn.");
    assertThat(codes(motor().shiftCam("close", -0.13))).containsExactly(Code.CAM_LATE);
    assertThat(codes(motor().shiftCam("open", -0.13))).containsExactly(Code.CAM_EARLY);
    assertThat(codes(motor().shiftCam("open", 0.13))).containsExactly(Code.CAM_LATE);
    // Within the guard band of 1.645 u = 0.017 turn nothing is certain.
    assertThat(codes(motor().shiftCam("close", 0.115))).isEmpty();
  }

  @Test
  void aLateCamExplainsWhatItDoesDownstream() {
    Bench bench = Bench.standard().shiftCam("close", -0.45);
    bench.run(30.6, 0, Drive.MOTOR, StoppedBy.TORQUE);
    assertThat(codes(bench)).containsExactly(Code.CAM_LATE);
  }

  @Test
  void aSilentCamDoesNotShoutStuckContacts() {
    List<Finding> found = of(motor().silence("close", false));
    assertThat(found).extracting(Finding::code).containsExactly(Code.CAM_SILENT);
    assertThat(found.get(0).message()).contains("23-24, 21-22, 33-34");
  }

  @Test
  void stuckContacts() {
    assertThat(codes(motor().stuck("k2", false))).containsExactly(Code.CONTACT_STUCK_OPEN);
    assertThat(codes(motor().stuck("k2", true))).containsExactly(Code.CONTACT_STUCK_CLOSED);
  }

  @Test
  void aStuckLimitContactExplainsStoppingOnTorque() {
    Bench bench = Bench.standard().stuck("k1", true).run(30.6, 0, Drive.MOTOR, StoppedBy.TORQUE);
    assertThat(codes(bench)).containsExactly(Code.CONTACT_STUCK_CLOSED);
  }

  @Test
  void aStuckLampExplainsTheLamps() {
    assertThat(codes(motor().stuck("k5", false))).containsExactly(Code.CONTACT_STUCK_OPEN);
    assertThat(codes(motor().stuck("k6", true))).containsExactly(Code.CONTACT_STUCK_CLOSED);
  }

  @Test
  void invertedContact() {
    List<Finding> found = of(motor().invert("k1"));
    assertThat(found).extracting(Finding::code).containsExactly(Code.CONTACT_INVERTED);
    assertThat(found.get(0).contact()).contains("21-22");
  }

  @Test
  void exchangedOnOneCamIsNotTwoInversions() {
    List<Finding> found = of(motor().exchange("k1", "k2"));
    assertThat(found).extracting(Finding::code).containsExactly(Code.CONTACTS_EXCHANGED);
    assertThat(found.get(0).contacts()).containsExactly("23-24", "21-22");
  }

  @Test
  void exchangedBetweenCamsIsNotCamsOutOfPlace() {
    assertThat(codes(motor().exchange("k1", "k3"))).containsExactly(Code.CONTACTS_EXCHANGED);
    assertThat(codes(motor().exchange("k1", "k4"))).containsExactly(Code.CONTACTS_EXCHANGED);
    assertThat(codes(motor().exchange("k7", "k1"))).containsExactly(Code.CONTACTS_EXCHANGED);
    assertThat(codes(motor().exchange("k7", "k8"))).containsExactly(Code.CONTACTS_EXCHANGED);
    assertThat(codes(motor().exchange("k5", "k6"))).containsExactly(Code.CONTACTS_EXCHANGED);
  }

  /** As a wrong sign of the reading shows where no stop was marked. */
  @Test
  void severalPairsOfBothEndsLookLikeAWrongSign() {
    assertThat(of(motor().exchange("k1", "k3")))
        .extracting(Finding::action)
        .noneMatch(action -> action.contains("turns_per_unit"));
    List<Finding> mirrored = of(motor().exchange("k1", "k3").exchange("k7", "k8"));
    assertThat(mirrored)
        .extracting(Finding::code)
        .containsExactly(Code.CONTACTS_EXCHANGED, Code.CONTACTS_EXCHANGED);
    assertThat(mirrored.get(0).action()).contains("turns_per_unit is positive where");
    assertThat(mirrored.get(1).action()).startsWith("Find out where");
  }

  @Test
  void exchangedIsToldWithoutAnyStopToo() {
    Bench bench = motor().exchange("k1", "k3");
    bench.closedStop = Optional.empty();
    bench.openStop = Optional.empty();
    assertThat(codes(bench))
        .containsExactly(Code.CONTACTS_EXCHANGED, Code.STOP_UNKNOWN, Code.STOP_UNKNOWN);
  }

  @Test
  void exchangedLinesThatDoTheSameGoUnnoticed() {
    assertThat(codes(motor().exchange("k1", "k5"))).isEmpty();
  }

  @Test
  void contactAwayFromItsMates() {
    assertThat(codes(motor().shift("k5", 0.4))).containsExactly(Code.CONTACT_OFF_CAM);
    assertThat(codes(motor().shift("k5", 0.08))).isEmpty();
  }

  @Test
  void overlapOnlyWhereItIsCertain() {
    // k1 breaks while closing; k2 makes. Made 0.03 turn (30 ms) too soon.
    List<Finding> found = of(motor().shift("k2", 0.03));
    assertThat(found).extracting(Finding::code).containsExactly(Code.CONTACTS_OVERLAP);
    assertThat(found.get(0).figure("least_s").getAsDouble()).isCloseTo(0.029, within(0.001));
    // Half a row apart: both brackets meet.
    assertThat(codes(motor().shift("k2", 0.0005))).isEmpty();
    // Breaks before it makes.
    assertThat(codes(new Bench(Sheets.standard()).hand(1).shift("k2", 0))).isEmpty();
  }

  @Test
  void chatterBeyondTwentyMilliseconds() {
    assertThat(codes(settling(0.022))).containsExactly(Code.CONTACT_CHATTER);
    assertThat(codes(settling(0.0205))).isEmpty();
  }

  private static Bench settling(double seconds) {
    Bench bench = Bench.standard();
    int channel = bench.sheet.channels().indexOf("k3");
    bench.tamper =
        trips ->
            trips.stream()
                .map(t -> t.channel() == channel && t.stroke() == 1 ? settled(t, seconds) : t)
                .toList();
    return bench;
  }

  private static Trip settled(Trip t, double seconds) {
    Change c = t.change();
    Change slow =
        new Change(
            c.channel(),
            c.to(),
            c.beforeNs(),
            c.afterNs(),
            c.afterNs() + Math.round(seconds * 1e9),
            6,
            c.place(),
            c.motion());
    return new Trip(
        t.recording(),
        t.stroke(),
        t.setting(),
        t.channel(),
        t.to(),
        t.direction(),
        t.atRest(),
        t.timeS(),
        t.reading(),
        t.x(),
        slow);
  }

  @Test
  void intermittentAwayFromTripPoints() {
    assertThat(codes(disturbed(15))).containsExactly(Code.CONTACT_INTERMITTENT);
    // Flutter beside its own trip point is not a loose wire.
    assertThat(codes(disturbed(0.6))).isEmpty();
  }

  private static Bench disturbed(double x) {
    Bench bench = Bench.standard();
    long at = Math.round((1 + x) * 1e9);
    Place place = new Place(x, 0.003, Shape.NORMAL, 1, 0.01, 100);
    int channel = bench.sheet.channels().indexOf("k1");
    bench.disturbances.add(new Disturbance(channel, at, at + 5_000_000, 2, place));
    return bench;
  }

  @Test
  void settledThereAndBackIsIntermittentAndNotACam() {
    Bench bench = Bench.standard();
    bench.tamper =
        trips -> {
          List<Trip> more = new ArrayList<>(trips);
          more.add(bench.trip("k7", ContactState.CLOSED, 0, 0, Direction.OPENING, 21, 20));
          more.add(bench.trip("k7", ContactState.OPEN, 0, 0, Direction.OPENING, 21.3, 20.3));
          more.sort(java.util.Comparator.comparingDouble(Trip::timeS));
          return more;
        };
    List<Finding> found = of(bench);
    assertThat(found).extracting(Finding::code).containsExactly(Code.CONTACT_INTERMITTENT);
    assertThat(found.get(0).figure("longest_s").getAsDouble()).isCloseTo(0.3, within(1e-9));
  }

  @Test
  void movedAtRest() {
    Bench bench = Bench.standard();
    bench.tamper =
        trips -> {
          List<Trip> more = new ArrayList<>(trips);
          more.add(atRest(bench, "k1", ContactState.CLOSED, 32.5));
          more.add(atRest(bench, "k1", ContactState.OPEN, 32.9));
          more.add(atRest(bench, "k2", ContactState.OPEN, 32.5));
          return more;
        };
    List<Finding> found = of(bench);
    assertThat(found).extracting(Finding::code).containsExactly(Code.CONTACT_MOVED_AT_REST);
    assertThat(found.get(0).severity()).isEqualTo(Severity.CAUTION);
    assertThat(found.get(0).contacts()).containsExactly("21-22", "23-24");
  }

  private static Trip atRest(Bench bench, String channel, ContactState to, double timeS) {
    Trip t = bench.trip(channel, to, -1, 0, Direction.OPENING, timeS, 31);
    return new Trip(
        0, -1, 0, t.channel(), to, Optional.empty(), true, timeS, t.reading(), t.x(), t.change());
  }

  @Test
  void differentialBeyondTheSheet() {
    assertThat(codes(differential(0.19))).containsExactly(Code.DIFFERENTIAL_LARGE);
    assertThat(codes(differential(0.15))).isEmpty();
  }

  /** On the open cam, whose opening change is the one that is judged: only the way back moves. */
  private static Bench differential(double turns) {
    Bench bench = motor();
    for (String channel : List.of("k3", "k4", "k6")) {
      bench.channels.computeIfPresent(
          channel,
          (name, flips) ->
              flips.stream()
                  .map(f -> new Bench.Flip(f.opening(), f.opening() - turns, f.closedAbove()))
                  .toList());
    }
    return bench;
  }

  @Test
  void lostMotionBeyondTheSheet() {
    Bench bench = motor();
    bench.lostMotion = Optional.of(Estimate.of(0.32, 0.005));
    assertThat(codes(bench)).containsExactly(Code.LOST_MOTION_LARGE);
    bench.lostMotion = Optional.of(Estimate.of(0.305, 0.005));
    assertThat(codes(bench)).isEmpty();
  }

  @Test
  void driftIsNotScatterAndNotACamOutOfPlace() {
    Bench bench = new Bench(Sheets.standard()).hand(4);
    double[] creep = new double[8];
    for (int i = 0; i < creep.length; i++) {
      creep[i] = 0.05 * i;
    }
    for (String channel : List.of("k1", "k2", "k5")) {
      bench.shifts.put(channel, creep);
    }
    List<Finding> found = of(bench);
    assertThat(found).extracting(Finding::code).containsExactly(Code.TRIP_DRIFT);
    assertThat(found.get(0).figure("moved").getAsDouble()).isCloseTo(0.35, within(0.01));
  }

  @Test
  void driftNeedsStrokesAndSize() {
    Bench few = Bench.standard();
    few.shifts.put("k7", new double[] {0, 0, 0.2, 0.2});
    assertThat(codes(few)).isEmpty();
    Bench small = new Bench(Sheets.standard()).hand(4);
    small.shifts.put("k7", new double[] {0, 0.02, 0.04, 0.06, 0.08, 0.1, 0.12, 0.14});
    assertThat(codes(small)).isEmpty();
  }

  @Test
  void scatterBeyondAThirdOfTheTolerance() {
    assertThat(codes(scattered(0.08))).containsExactly(Code.TRIP_SCATTER);
    assertThat(codes(scattered(0.02))).isEmpty();
  }

  private static Bench scattered(double turns) {
    Bench bench = new Bench(Sheets.standard()).hand(3);
    double[] signs = {turns, -turns, -turns, turns, turns, -turns};
    for (String channel : List.of("k3", "k4", "k6")) {
      bench.shifts.put(channel, signs);
    }
    return bench;
  }

  @Test
  void stoppedOnTorqueWhereTheLimitWasMeantTo() {
    Bench bench = Bench.standard().run(30.6, 12, Drive.MOTOR, StoppedBy.TORQUE);
    List<Finding> found = of(bench);
    assertThat(found).extracting(Finding::code).containsExactly(Code.STOPPED_ON_TORQUE);
    assertThat(found.get(0).message()).contains("12.00 turns of travel");
    Bench seated =
        new Bench(Sheets.standard(Seat.TORQUE, Seat.LIMIT))
            .hand(2)
            .run(30.6, 0, Drive.MOTOR, StoppedBy.TORQUE);
    assertThat(codes(seated)).isEmpty();
  }

  @Test
  void torqueBeforeTheLimitProvesNothing() {
    Bench seated =
        new Bench(Sheets.standard(Seat.TORQUE, Seat.LIMIT))
            .hand(2)
            .run(30.6, 3, Drive.MOTOR, StoppedBy.TORQUE);
    assertThat(codes(seated)).containsExactly(Code.LIMIT_AFTER_TORQUE);
  }

  @Test
  void coastReachesStop() {
    Bench bench = Bench.standard().run(30.6, 0.005, Drive.MOTOR, StoppedBy.LIMIT);
    bench.coast = Optional.of(0.495);
    assertThat(codes(bench)).containsExactly(Code.COAST_REACHES_STOP);
    Bench spared = Bench.standard().run(30.6, 0.04, Drive.MOTOR, StoppedBy.LIMIT);
    spared.coast = Optional.of(0.46);
    assertThat(codes(spared)).isEmpty();
  }

  @Test
  void reversedAgainstItsContactor() {
    Bench bench = motor();
    bench.tamper =
        trips -> {
          List<Trip> more = new ArrayList<>(trips);
          more.add(contactor(bench, "m1", ContactState.CLOSED, 4));
          return more;
        };
    assertThat(codes(bench)).containsExactly(Code.MOTOR_REVERSED);
    Bench right = Bench.standard().run(0.4, 30.6, Drive.MOTOR, StoppedBy.LIMIT);
    right.tamper =
        trips -> {
          List<Trip> more = new ArrayList<>(trips);
          more.add(contactor(right, "m2", ContactState.CLOSED, 4));
          return more;
        };
    assertThat(codes(right)).isEmpty();
  }

  /** The contactor pulls in just as stroke i begins: after four hand strokes of 31 turns. */
  private static Trip contactor(Bench bench, String channel, ContactState to, int stroke) {
    double timeS = 1 + stroke * 33.0;
    return bench.trip(channel, to, stroke, 0, Direction.OPENING, timeS, 0.4);
  }

  @Test
  void strokeTimeOutsideTheSheet() {
    Bench bench = motor();
    bench.retime = strokes -> strokes.stream().map(s -> longer(s, 3.1)).toList();
    assertThat(codes(bench)).containsExactly(Code.STROKE_TIME_OFF);
    Bench right = motor();
    right.retime = strokes -> strokes.stream().map(s -> longer(s, 2.9)).toList();
    assertThat(codes(right)).isEmpty();
  }

  private static Stroke longer(Stroke s, double seconds) {
    return timed(s, s.startS() - seconds, s.endS());
  }

  private static Stroke ending(Stroke s, double endS) {
    return timed(s, s.startS(), endS);
  }

  private static Stroke timed(Stroke s, double startS, double endS) {
    return new Stroke(
        s.recording(),
        s.number(),
        s.setting(),
        s.drive(),
        s.direction(),
        s.from(),
        s.to(),
        startS,
        endS,
        s.extent(),
        s.stoppedBy(),
        s.powered());
  }

  @Test
  void lampsAsChartedButChartedWrong() {
    Bench bench = motor();
    bench.sheet = Recharted.lampsOnQuarter(bench.sheet);
    Bench dark = new Bench(Recharted.lampsOnQuarter(Sheets.standard())).hand(1).motor(1);
    assertThat(codes(dark)).containsExactly(Code.LAMPS_DARK);
    Bench wrong = new Bench(Recharted.lampsBothOpenSide(Sheets.standard())).hand(1).motor(1);
    assertThat(codes(wrong)).contains(Code.LAMPS_WRONG);
  }

  @Test
  void lampsAreNotJudgedWhereNoEndWasSeen() {
    Bench bench =
        new Bench(Sheets.standard())
            .run(0.9, 30.1, Drive.HAND, StoppedBy.OPERATOR)
            .run(30.1, 0.9, Drive.HAND, StoppedBy.OPERATOR);
    assertThat(codes(bench)).contains(Code.LAMPS_WRONG);
    bench.closedStop = Optional.empty();
    bench.openStop = Optional.empty();
    assertThat(codes(bench)).containsExactly(Code.STOP_UNKNOWN, Code.STOP_UNKNOWN);
  }

  @Test
  void aLampSeenToChangeWithinTheRowInWhichTheDriveStoodIsRight() {
    // The open cam trips half a second before the stop, in a row of a millisecond.
    assertThat(codes(stoodBeforeTrip(0.0003))).doesNotContain(Code.LAMPS_WRONG);
    assertThat(codes(stoodBeforeTrip(0.0010))).contains(Code.LAMPS_WRONG);
  }

  private static Bench stoodBeforeTrip(double seconds) {
    Bench bench = new Bench(Sheets.standard()).hand(1);
    bench.retime =
        strokes -> strokes.stream().map(s -> ending(s, s.endS() - 0.5 - seconds)).toList();
    return bench;
  }

  @Test
  void bypassShorterThanItMustCover() {
    Bench bench = new Bench(Recharted.bypassCovers(Sheets.standard(), 3)).hand(2);
    assertThat(codes(bench)).containsExactly(Code.BYPASS_SHORT, Code.BYPASS_SHORT);
    assertThat(codes(new Bench(Recharted.bypassCovers(Sheets.standard(), 1.6)).hand(2))).isEmpty();
  }

  @Test
  void spanOutsideTheSheet() {
    Bench bench = new Bench(withSpan(30.4, 0.5)).hand(2);
    assertThat(codes(bench)).containsExactly(Code.SPAN_OFF);
    assertThat(codes(new Bench(withSpan(30.49, 0.5)).hand(2))).isEmpty();
  }

  private static JobSheet withSpan(double span, double tolerance) {
    return Recharted.travel(
        Sheets.standard(),
        new TravelPlan(
            OptionalDouble.of(span),
            OptionalDouble.of(tolerance),
            OptionalDouble.of(0.3),
            OptionalDouble.of(0.15),
            OptionalDouble.empty(),
            OptionalDouble.empty()));
  }

  @Test
  void stopNeverTouched() {
    Bench bench = motor();
    bench.openStop = Optional.empty();
    List<Finding> found = of(bench);
    assertThat(found).extracting(Finding::code).containsExactly(Code.STOP_UNKNOWN);
    assertThat(found.get(0).severity()).isEqualTo(Severity.NOTE);
    assertThat(found.get(0).message()).contains("open hard stop");
  }

  @Test
  void recordingFaults() {
    Bench bench = motor();
    bench.losses.add(new Loss(5_000_000_000L, 5_200_000_000L, 200, Loss.What.ROWS, 0.2));
    assertThat(codes(bench)).containsExactly(Code.SAMPLES_LOST);
    bench.losses.add(new Loss(5_000_000_000L, 5_200_000_000L, -1, Loss.What.POSITION, 0.2));
    assertThat(codes(bench)).containsExactly(Code.SAMPLES_LOST);
    bench.losses.remove(0);
    assertThat(codes(bench)).containsExactly(Code.POSITION_GAP);
    Bench slip = motor().shiftCam("close", 0.4);
    slip.faults.add(new ReadingFault(ReadingFault.Kind.SLIP, 40_000_000_000L, 40_100_000_000L, 2));
    assertThat(codes(slip)).containsExactly(Code.POSITION_SLIP);
    Bench frozen = motor();
    frozen.faults.add(
        new ReadingFault(ReadingFault.Kind.FROZEN, 40_000_000_000L, 50_000_000_000L, 0));
    assertThat(codes(frozen)).containsExactly(Code.POSITION_FROZEN);
    Bench repeated = motor();
    repeated.faults.add(new ReadingFault(ReadingFault.Kind.REPEATED_STAMP, 5, 5, 3));
    assertThat(codes(repeated)).containsExactly(Code.TIME_REPEATED);
  }

  @Test
  void aFaultOnASpareIsANote() {
    List<Finding> found = of(motor().invert("k8"));
    assertThat(found).extracting(Finding::code).containsExactly(Code.CONTACT_INVERTED);
    assertThat(found.get(0).severity()).isEqualTo(Severity.NOTE);
    assertThat(found.get(0).contact()).contains("53-54");
  }

  @Test
  void aNoteExplainsNoFault() {
    Bench bench = new Bench(Recharted.spare(Sheets.standard(), "33-34")).hand(2).shift("k5", -0.4);
    List<Finding> found = of(bench);
    assertThat(found)
        .extracting(Finding::code)
        .containsExactly(Code.CONTACTS_OVERLAP, Code.CONTACT_OFF_CAM);
    assertThat(found).extracting(Finding::severity).containsExactly(Severity.FAULT, Severity.NOTE);
  }

  @Test
  void everyRuleOfExplanationHasAReasonAndNoCodeExplainsItself() {
    assertThat(Explanations.RULES)
        .allSatisfy(
            rule -> {
              assertThat(rule.reason()).isNotBlank();
              assertThat(rule.causes()).doesNotContainAnyElementsOf(rule.effects());
            });
  }
}
