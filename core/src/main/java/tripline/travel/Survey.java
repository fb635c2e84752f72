package tripline.travel;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tripline.job.Contact;
import tripline.job.Direction;
import tripline.job.JobSheet;
import tripline.job.SensorSide;
import tripline.measure.Estimate;
import tripline.reduce.Change;
import tripline.reduce.Movement;
import tripline.reduce.Movement.Move;
import tripline.reduce.Trace;
import tripline.sample.Drive;

/**
 * What was seen in all recordings, in readings: legs, changes, adjustments. The ground on which
 * zero, stops and lost motion are then found.
 */
public final class Survey {
  private final JobSheet sheet;
  private final List<RecordingTrace> recordings;
  private final SheetChannels channels;
  private final ZeroFrames frames;
  private final List<Adjustment> adjustments;
  private final List<Leg> legs = new ArrayList<>();
  private final List<Passage> passages = new ArrayList<>();
  private final List<Contactors> contactors;

  private Survey(List<RecordingTrace> recordings, JobSheet sheet) {
    this.sheet = sheet;
    this.recordings = List.copyOf(recordings);
    channels = new SheetChannels(sheet);
    frames = ZeroFrames.of(recordings, sheet.position().modulus());
    adjustments = Adjustments.of(recordings, sheet);
    contactors = recordings.stream().map(r -> Contactors.of(r.trace(), sheet)).toList();
  }

  /** Surveys recordings in their order. */
  public static Survey of(List<RecordingTrace> recordings, JobSheet sheet) {
    Survey survey = new Survey(recordings, sheet);
    for (int r = 0; r < recordings.size(); r++) {
      survey.addPassages(r);
      survey.addLegs(r);
    }
    return survey;
  }

  public JobSheet sheet() {
    return sheet;
  }

  public List<RecordingTrace> recordings() {
    return recordings;
  }

  public SheetChannels channels() {
    return channels;
  }

  /** Where one setting ends and the next begins, in order of time. */
  public List<Adjustment> adjustments() {
    return adjustments;
  }

  /** Legs of all recordings, in order of time. */
  public List<Leg> legs() {
    return List.copyOf(legs);
  }

  /** Legs of one recording, in order of time. */
  public List<Leg> legs(int recording) {
    return legs.stream().filter(l -> l.recording() == recording).toList();
  }

  /**
   * What moved the valve on a leg. Where nobody said so and the contactors were read, they tell: of
   * a leg that was begun by motor and ended by hand it is the hand, whose end it is.
   */
  public Drive drive(Leg leg) {
    RecordingTrace recording = recordings.get(leg.recording());
    if (recording.told() == RecordingTrace.Told.STATED) {
      return recording.drive();
    }
    Move last = leg.lastMove();
    return contactors
        .get(leg.recording())
        .wereIn(leg.direction().toward(), last.fromNs(), last.toNs())
        .map(in -> in ? Drive.MOTOR : Drive.HAND)
        .orElse(recording.drive());
  }

  /** Changes on channels of the sheet, in order. */
  public List<Passage> passages() {
    return List.copyOf(passages);
  }

  /** What was added to the readings of a recording to unwrap them against the one before. */
  public double shift(int recording) {
    return frames.shift(recording);
  }

  /**
   * Whether a recording kept the position zero and begins where the one before it ended.
   *
   * @param withinTurns how near, turns
   */
  public boolean goesOn(int recording, double withinTurns) {
    if (recording == 0 || frames.frame(recording) != frames.frame(recording - 1)) {
      return false;
    }
    double before =
        ZeroFrames.lastReading(recordings.get(recording - 1).trace()) + frames.shift(recording - 1);
    double now =
        ZeroFrames.firstReading(recordings.get(recording).trace()) + frames.shift(recording);
    return Math.abs(now - before) * Math.abs(sheet.position().turnsPerUnit()) <= withinTurns;
  }

  ZeroFrames frames() {
    return frames;
  }

  /** Handwheel turns of a reading, from an arbitrary zero that recordings of one frame share. */
  public Estimate turns(Estimate reading) {
    return reading.times(sheet.position().turnsPerUnit());
  }

  private void addPassages(int recording) {
    Trace trace = recordings.get(recording).trace();
    for (Change change : trace.changes()) {
      int channel = channels.fromTrace(trace.channels(), change.channel());
      if (channel >= 0) {
        passages.add(passage(recording, trace, channel, change));
      }
    }
  }

  private Passage passage(int recording, Trace trace, int channel, Change change) {
    Optional<Estimate> reading =
        ChangeReading.of(
            change, trace.scanNs(), trace.losses(), sheet.position(), frames.shift(recording));
    Optional<Direction> direction =
        change.motion() == Change.Motion.MOVING ? direction(trace, change) : Optional.empty();
    return new Passage(
        recording, setting(recording, change.timeNs()), channel, direction, reading, change);
  }

  /** Setting in force at a time of a recording. */
  public int setting(int recording, long timeNs) {
    return (int) adjustments.stream().filter(a -> !a.after(recording, timeNs)).count();
  }

  /** By the move that holds the change, else by the fitted speed, else by the nearest move. */
  private Optional<Direction> direction(Trace trace, Change change) {
    long timeNs = change.timeNs();
    Optional<Move> nearest = Optional.empty();
    long best = Long.MAX_VALUE;
    for (Movement movement : trace.movements()) {
      if (movement instanceof Move move) {
        long away = Math.max(0, Math.max(move.fromNs() - timeNs, timeNs - move.toNs()));
        if (away < best) {
          best = away;
          nearest = Optional.of(move);
        }
      }
    }
    double speed = change.place().speed();
    boolean speedTells = best > 0 && Math.abs(speed) > 2 * change.place().speedU();
    if (speedTells) {
      return Optional.of(towards(Math.signum(speed)));
    }
    return nearest.map(move -> towards(move.sign()));
  }

  private Direction towards(double sign) {
    return sign * sheet.position().turnsPerUnit() > 0 ? Direction.OPENING : Direction.CLOSING;
  }

  private void addLegs(int recording) {
    long[] changesNs =
        passages.stream()
            .filter(p -> p.recording() == recording && p.direction().isPresent())
            .filter(p -> channels.contact(p.channel()).isPresent())
            .mapToLong(p -> p.change().timeNs())
            .toArray();
    legs.addAll(
        new Legs(
                recordings.get(recording).trace(),
                recording,
                sheet.position().turnsPerUnit(),
                frames.shift(recording),
                joinTurns(),
                adjustments,
                changesNs)
            .legs());
  }

  /** With the sensor on the handwheel, turning back within the lost motion moves nothing. */
  private double joinTurns() {
    double play =
        sheet.position().side() == SensorSide.HANDWHEEL
            ? sheet.travel().lostMotionTurns().orElse(0)
            : 0;
    return Math.max(Adjustments.LEAST_TRAVEL_TURNS, play);
  }

  /** Whether a channel carries a position contact. */
  boolean isContact(Passage passage) {
    return channels.contact(passage.channel()).isPresent();
  }

  /** The contact of a passage. */
  Optional<Contact> contact(Passage passage) {
    return channels.contact(passage.channel());
  }
}
