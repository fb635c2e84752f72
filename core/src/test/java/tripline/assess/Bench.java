package tripline.assess;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import tripline.develop.Development;
import tripline.develop.Setting;
import tripline.develop.Stroke;
import tripline.develop.Stroke.StoppedBy;
import tripline.develop.Trip;
import tripline.job.Contact;
import tripline.job.Direction;
import tripline.job.End;
import tripline.job.JobSheet;
import tripline.measure.Estimate;
import tripline.measure.Part;
import tripline.measure.Shape;
import tripline.reduce.Change;
import tripline.reduce.Disturbance;
import tripline.reduce.Loss;
import tripline.reduce.Outline;
import tripline.reduce.Place;
import tripline.reduce.ReadingFault;
import tripline.reduce.Trace;
import tripline.sample.ContactState;
import tripline.sample.Drive;
import tripline.travel.Coordinate;
import tripline.travel.Datum;
import tripline.travel.HardStop;
import tripline.travel.RecordingTrace;

/**
 * A development made by hand: what each channel does along the travel, and the strokes. Travel at
 * one turn a second, rows of a millisecond, readings equal to x.
 */
public final class Bench {
  static final double SCAN_S = 0.001;
  private static final double END_TURNS = 1;

  /** A change of a channel along the travel. */
  public record Flip(double opening, double closing, boolean closedAbove) {}

  /** A stroke to make; the rest of its fields follow. */
  public record Run(double from, double to, Drive drive, StoppedBy stoppedBy, int setting) {}

  public JobSheet sheet;
  public final Map<String, List<Flip>> channels = new HashMap<>();
  public final List<Run> runs = new ArrayList<>();
  public final List<Loss> losses = new ArrayList<>();
  public final List<ReadingFault> faults = new ArrayList<>();
  public final List<Disturbance> disturbances = new ArrayList<>();
  public final Map<String, Boolean> constant = new HashMap<>();
  public Optional<Double> closedStop = Optional.of(0.0);
  public Optional<Double> openStop = Optional.of(Sheets.SPAN);
  public double uOwn = 0.003;
  public double uStop = 0.01;
  public Optional<Estimate> lostMotion = Optional.of(Estimate.of(0.2, 0.005));
  public Optional<Double> coast = Optional.of(0.1);
  public UnaryOperator<List<Trip>> tamper = trips -> trips;
  public UnaryOperator<List<Stroke>> retime = strokes -> strokes;

  /** Shift of every trip of a channel in stroke i (over all strokes). */
  public final Map<String, double[]> shifts = new HashMap<>();

  public Bench(JobSheet sheet) {
    this.sheet = sheet;
    for (Contact contact : sheet.contacts()) {
      channels.put(contact.channel(), charted(contact));
    }
  }

  /** Two full hand strokes each way on the standard sheet. */
  public static Bench standard() {
    return new Bench(Sheets.standard()).hand(2);
  }

  /** Contacts as charted, with a differential of 0.02 turn. */
  private List<Flip> charted(Contact contact) {
    ChartLine line =
        ChartLine.of(contact, Targets.of(sheet, coordinate(Optional.of(0.0), openStop)));
    List<Flip> flips = new ArrayList<>();
    for (TripTarget edge : line.edges()) {
      double x = edge.x().orElseThrow().value();
      boolean closing = edge.from() == End.CLOSED;
      flips.add(
          new Flip(closing ? x + 0.02 : x, closing ? x : x - 0.02, line.closedAbove(edge.edge())));
    }
    return flips;
  }

  public Bench hand(int pairs) {
    for (int i = 0; i < pairs; i++) {
      run(0, Sheets.SPAN, Drive.HAND, StoppedBy.HARD_STOP);
      run(Sheets.SPAN, 0, Drive.HAND, StoppedBy.HARD_STOP);
    }
    return this;
  }

  /** Motor strokes that stop on the limit contacts and coast. */
  public Bench motor(int pairs) {
    for (int i = 0; i < pairs; i++) {
      run(0.4, 30.6, Drive.MOTOR, StoppedBy.LIMIT);
      run(30.6, 0.4, Drive.MOTOR, StoppedBy.LIMIT);
    }
    return this;
  }

  public Bench run(double from, double to, Drive drive, StoppedBy stoppedBy) {
    runs.add(new Run(from, to, drive, stoppedBy, 0));
    return this;
  }

  /** Moves everything on a cam. */
  public Bench shiftCam(String cam, double turns) {
    sheet.contacts().stream()
        .filter(c -> c.cam().equals(cam))
        .forEach(c -> shift(c.channel(), turns));
    return this;
  }

  public Bench shift(String channel, double turns) {
    channels.computeIfPresent(
        channel,
        (name, flips) ->
            flips.stream()
                .map(f -> new Flip(f.opening() + turns, f.closing() + turns, f.closedAbove()))
                .toList());
    return this;
  }

  public Bench invert(String channel) {
    channels.computeIfPresent(
        channel,
        (name, flips) ->
            flips.stream().map(f -> new Flip(f.opening(), f.closing(), !f.closedAbove())).toList());
    return this;
  }

  public Bench exchange(String a, String b) {
    List<Flip> first = channels.get(a);
    channels.put(a, channels.get(b));
    channels.put(b, first);
    return this;
  }

  public Bench stuck(String channel, boolean closed) {
    channels.put(channel, List.of());
    constant.put(channel, closed);
    return this;
  }

  public Bench silence(String cam, boolean closed) {
    sheet.contacts().stream()
        .filter(c -> c.cam().equals(cam))
        .forEach(c -> stuck(c.channel(), closed));
    return this;
  }

  public Development build() {
    List<Stroke> strokes = new ArrayList<>();
    List<Trip> trips = new ArrayList<>();
    double t = 1;
    for (int i = 0; i < runs.size(); i++) {
      Run run = runs.get(i);
      double length = Math.abs(run.to() - run.from());
      strokes.add(stroke(run, i, t, t + length));
      trips.addAll(trips(run, i, t));
      t += length + 2;
    }
    trips.sort(Comparator.comparingDouble(Trip::timeS));
    int last = runs.get(runs.size() - 1).setting();
    List<Setting> settings = new ArrayList<>();
    for (int number = 0; number <= last; number++) {
      int wanted = number;
      settings.add(
          new Setting(
              number,
              0,
              strokes.stream()
                  .filter(s -> s.setting() == wanted)
                  .mapToDouble(Stroke::startS)
                  .min()
                  .orElse(0),
              t));
    }
    return new Development(
        sheet,
        List.of(recording(t)),
        coordinate(closedStop, openStop),
        settings,
        retime.apply(strokes),
        tamper.apply(trips),
        List.of());
  }

  private Coordinate coordinate(Optional<Double> closed, Optional<Double> open) {
    Datum datum =
        closed.isPresent()
            ? Datum.CLOSED_STOP
            : open.isPresent() ? Datum.OPEN_STOP : Datum.FIRST_READING;
    Optional<Estimate> span =
        closed.flatMap(
            c ->
                open.map(
                    o ->
                        Estimate.of(
                            o - c,
                            Part.common("stop:closed", -uStop, Shape.NORMAL),
                            Part.common("stop:open", uStop, Shape.NORMAL))));
    return new Coordinate(
        datum,
        closed.map(x -> stop(End.CLOSED, x)),
        open.map(x -> stop(End.OPEN, x)),
        span,
        lostMotion == null ? Optional.empty() : lostMotion);
  }

  private HardStop stop(End end, double x) {
    return new HardStop(
        end,
        Estimate.of(x, Part.common("stop:" + end.word(), uStop, Shape.NORMAL)),
        HardStop.Source.MARK);
  }

  private Stroke stroke(Run run, int number, double start, double end) {
    Direction direction = run.to() > run.from() ? Direction.OPENING : Direction.CLOSING;
    Optional<Stroke.Powered> powered =
        run.drive() == Drive.HAND
            ? Optional.empty()
            : Optional.of(
                new Stroke.Powered(
                    Estimate.of(1, 0.001),
                    Optional.of(Estimate.of(end - 0.1, 0.002)),
                    Optional.of(position(run.to() - 0.1 * direction.sign())),
                    Optional.of(Estimate.of(end, 0.002)),
                    Optional.of(position(run.to())),
                    coast.map(c -> Estimate.of(c, 0.004)),
                    false));
    return new Stroke(
        0,
        number,
        run.setting(),
        run.drive(),
        direction,
        run.from(),
        run.to(),
        start,
        end,
        extent(run, direction),
        run.stoppedBy(),
        powered);
  }

  private static Stroke.Extent extent(Run run, Direction direction) {
    boolean leaves = toStop(run.from(), direction.other()) < END_TURNS;
    boolean reaches = toStop(run.to(), direction) < END_TURNS;
    if (leaves && reaches) {
      return Stroke.Extent.FULL;
    }
    return leaves ? Stroke.Extent.FROM_END : reaches ? Stroke.Extent.TO_END : Stroke.Extent.PART;
  }

  private static double toStop(double x, Direction direction) {
    return direction == Direction.OPENING ? Sheets.SPAN - x : x;
  }

  private Estimate position(double x) {
    String stop = closedStop.isPresent() ? "stop:closed" : "stop:open";
    return Estimate.of(
        x, Part.own("fit", uOwn, Shape.NORMAL), Part.common(stop, -uStop, Shape.NORMAL));
  }

  private List<Trip> trips(Run run, int number, double start) {
    Direction direction = run.to() > run.from() ? Direction.OPENING : Direction.CLOSING;
    List<Trip> trips = new ArrayList<>();
    channels.forEach(
        (channel, flips) -> {
          double[] shift = shifts.getOrDefault(channel, new double[runs.size()]);
          for (Flip flip : flips) {
            double x =
                shift[number] + (direction == Direction.OPENING ? flip.opening() : flip.closing());
            boolean passed = (x - run.from()) * (x - run.to()) < 0;
            if (passed) {
              boolean closed = flip.closedAbove() == (direction == Direction.OPENING);
              double t = start + Math.abs(x - run.from());
              trips.add(
                  trip(
                      channel,
                      closed ? ContactState.CLOSED : ContactState.OPEN,
                      number,
                      run.setting(),
                      direction,
                      t,
                      x));
            }
          }
        });
    return trips;
  }

  public Trip trip(
      String channel,
      ContactState to,
      int stroke,
      int setting,
      Direction direction,
      double timeS,
      double x) {
    int index = sheet.channels().indexOf(channel);
    long before = Math.round((timeS - SCAN_S / 2) * 1e9);
    long after = before + Math.round(SCAN_S * 1e9);
    Place place = new Place(x, uOwn, Shape.NORMAL, direction.sign(), 0.01, 100);
    return new Trip(
        0,
        stroke,
        setting,
        index,
        to,
        Optional.of(direction),
        false,
        timeS,
        Optional.of(Estimate.of(x, Part.own("fit", uOwn, Shape.NORMAL))),
        Optional.of(position(x)),
        new Change(index, to, before, after, after, 0, place, Change.Motion.MOVING));
  }

  private RecordingTrace recording(double endS) {
    long closed = 0;
    double first = runs.get(0).from();
    for (Map.Entry<String, List<Flip>> channel : channels.entrySet()) {
      long bit = 1L << sheet.channels().indexOf(channel.getKey());
      closed |= closedAt(channel.getKey(), channel.getValue(), first) ? bit : 0;
    }
    for (Optional<String> torque : List.of(sheet.torqueClosing(), sheet.torqueOpening())) {
      closed |= torque.map(name -> 1L << sheet.channels().indexOf(name)).orElse(0L);
    }
    long known = (1L << sheet.channels().size()) - 1;
    Trace trace =
        new Trace(
            sheet.channels(),
            0,
            Math.round(endS * 1e9),
            Math.round(endS / SCAN_S),
            Math.round(endS / SCAN_S),
            0.001,
            0.0005,
            Math.round(SCAN_S * 1e9),
            List.of(),
            List.of(),
            disturbances,
            List.of(),
            losses,
            faults,
            new Trace.States(known, closed),
            new Trace.States(known, closed),
            new Outline(List.of()));
    return new RecordingTrace("a.csv", "00", Drive.HAND, RecordingTrace.Zero.LOST, trace);
  }

  private boolean closedAt(String channel, List<Flip> flips, double x) {
    if (flips.isEmpty()) {
      return constant.getOrDefault(channel, false);
    }
    boolean state = !flips.get(0).closedAbove();
    for (Flip flip : flips) {
      state = x > flip.opening() ? flip.closedAbove() : state;
    }
    return state;
  }

  public static OptionalDouble none() {
    return OptionalDouble.empty();
  }
}
