package tripline.compare;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import tripline.compare.Account.Origin;
import tripline.measure.Decision;
import tripline.measure.Estimate;
import tripline.result.Result.Backoff;
import tripline.result.Result.CamResult;
import tripline.result.Result.ContactResult;
import tripline.result.Result.EndResult;
import tripline.result.Result.EndsResult;
import tripline.result.Result.Measured;
import tripline.result.Result.PartResult;
import tripline.result.Result.SensorResult;
import tripline.result.Result.StopResult;
import tripline.result.Result.TravelResult;
import tripline.result.Result.TripResult;

/** An account made by hand: cams c1, c2 ... of one contact each, seen while closing. */
final class Sketch {
  static final double SPAN = 10;

  private final String name;
  private final List<CamResult> cams = new ArrayList<>();
  private final List<ContactResult> contacts = new ArrayList<>();
  private String tag = "CW-114";
  private String sheet = "sheet";
  private String datum = "closed-stop";
  private double datumPosition;
  private SensorResult sensor = new SensorResult("handwheel", 1, 0.001);
  private List<String> recordings;
  private Optional<String> reference = Optional.empty();
  private String stopSource = "mark";
  private int setting;
  private Measured backoff;

  Sketch(String name) {
    this.name = name;
    recordings = List.of("recording of " + name);
  }

  static PartResult part(String name, double u) {
    return new PartResult(name, u, "normal");
  }

  /** A figure of normal parts. */
  static Measured figure(double value, PartResult... parts) {
    double squares = Arrays.stream(parts).mapToDouble(p -> p.u() * p.u()).sum();
    return new Measured(value, Math.sqrt(squares), 1.96 * Math.sqrt(squares), List.of(parts));
  }

  /** The next cam, with the parts every trip point has. */
  Sketch cam(double x) {
    return cam(figure(x, part("fit", 0.002), part("stop:closed", 0.01)));
  }

  Sketch cam(Measured at) {
    return cam(at, 5, Decision.ACCEPT);
  }

  Sketch cam(Measured at, double target, Decision decision) {
    int n = cams.size() + 1;
    contact(n, new TripResult(null, "closing", "open", at, 1, 0));
    return camOnly(n, target, decision);
  }

  /** A cam that nothing was seen of. */
  Sketch unseen() {
    int n = cams.size() + 1;
    contact(n);
    return camOnly(n, 5, Decision.UNDECIDED);
  }

  private void contact(int n, TripResult... trips) {
    contacts.add(
        new ContactResult(
            n + "1-" + n + "2",
            n == 1 ? "limit-closing" : "spare",
            "c" + n,
            Decision.ACCEPT,
            true,
            true,
            null,
            List.of(),
            List.of(),
            List.of(trips)));
  }

  private Sketch camOnly(int n, double target, Decision decision) {
    cams.add(
        new CamResult(
            "c" + n, null, null, null, null, target, 0.1, null, "closed", decision, null, null, 1,
            null, null, null, null, null));
    return this;
  }

  Sketch tag(String other) {
    tag = other;
    return this;
  }

  Sketch sheet(String digest) {
    sheet = digest;
    return this;
  }

  Sketch from(String newDatum, double position) {
    datum = newDatum;
    datumPosition = position;
    return this;
  }

  Sketch sensor(String side, double turnsPerUnit, double scaleU) {
    sensor = new SensorResult(side, turnsPerUnit, scaleU);
    return this;
  }

  Sketch recordings(String... digests) {
    recordings = List.of(digests);
    return this;
  }

  /** Its stops come from another result. */
  Sketch reference(String digest) {
    reference = Optional.of(digest);
    stopSource = "reference";
    return this;
  }

  Sketch setting(int number) {
    setting = number;
    return this;
  }

  Sketch backoff(Measured figure) {
    backoff = figure;
    return this;
  }

  Account account() {
    StopResult stop = new StopResult(12.4, 0.01, stopSource);
    EndResult end =
        new EndResult(
            new Backoff(
                backoff == null ? null : backoff.value(),
                backoff == null ? null : backoff.u(),
                backoff == null ? null : backoff.u95(),
                0.5,
                0.1,
                Decision.ACCEPT,
                null,
                backoff),
            null,
            null,
            null,
            null,
            null,
            Decision.ACCEPT);
    return new Account(
        tag,
        new Origin(name, setting, sheet, recordings, reference),
        Optional.of(Decision.ACCEPT),
        new TravelResult(datum, datumPosition, sensor, stop, stop, null, null, null),
        cams,
        contacts,
        new EndsResult(end, end));
  }

  /** Movement of a cam, by number. */
  static Optional<Estimate> moved(Comparison comparison, int cam) {
    return comparison.cams().get(cam - 1).move().by();
  }
}
