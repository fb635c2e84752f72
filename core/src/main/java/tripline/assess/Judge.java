package tripline.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import tripline.develop.Development;
import tripline.develop.Stroke;
import tripline.develop.Stroke.StoppedBy;
import tripline.job.Contact;
import tripline.job.Direction;
import tripline.job.End;
import tripline.job.JobSheet;
import tripline.measure.Conformity;
import tripline.measure.Decision;
import tripline.measure.Estimate;
import tripline.sample.Drive;

/** Judges one setting: first who is who, then where each trips, then what that is worth. */
final class Judge {
  private final Development development;
  private final JobSheet sheet;
  private final int setting;
  private final ReadingTrust trust;
  private final List<TripTarget> targets;
  private final Wiring wiring;
  private final List<ContactSeen> contacts;
  private final List<List<Missed>> missed;

  private Judge(
      Development development, List<TripTarget> targets, ReadingTrust trust, int setting) {
    this.trust = trust;
    this.development = development;
    this.sheet = development.sheet();
    this.setting = setting;
    List<ChartLine> bare = lines(sheet, targets);
    List<Observed> own = observed(bare, List.of());
    this.targets = Registration.align(targets, bare, own);
    List<ChartLine> lines = lines(sheet, this.targets);
    this.wiring = Wiring.of(sheet, lines, own);
    List<Observed> effective = observed(lines, wiring.channels());
    this.contacts =
        IntStream.range(0, lines.size())
            .mapToObj(i -> ContactSeen.of(i, lines.get(i), effective.get(i)))
            .toList();
    Passings passings = new Passings(development, this.targets, contacts);
    this.missed = contacts.stream().map(passings::missed).toList();
  }

  static SettingJudgement of(
      Development development, List<TripTarget> targets, ReadingTrust trust, int setting) {
    return new Judge(development, targets, trust, setting).judge();
  }

  private static List<ChartLine> lines(JobSheet sheet, List<TripTarget> targets) {
    return sheet.contacts().stream().map(c -> ChartLine.of(c, targets)).toList();
  }

  private List<Observed> observed(List<ChartLine> lines, List<Integer> channels) {
    List<Observed> all = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      ChartLine line = lines.get(i);
      int channel =
          channels.isEmpty() ? sheet.channels().indexOf(line.contact().channel()) : channels.get(i);
      all.add(Observed.of(development, setting, channel, Math.max(1, line.edges().size())));
    }
    return all;
  }

  private SettingJudgement judge() {
    List<CamJudgement> cams = targets.stream().map(this::cam).toList();
    return new SettingJudgement(
        setting,
        contacts.stream().map(c -> contact(c, cams)).toList(),
        cams,
        end(End.CLOSED),
        end(End.OPEN),
        wiring.exchanges());
  }

  private CamJudgement cam(TripTarget target) {
    List<ContactSeen> mine =
        contacts.stream().filter(c -> c.contact().cam().equals(target.cam())).toList();
    Optional<ContactSeen> reference =
        mine.stream()
            .filter(c -> c.track(target.edge()).filter(t -> !t.crossings().isEmpty()).isPresent())
            .min(Judge::limitFirst);
    return CamJudgement.of(target, reference, silent(mine), trust);
  }

  private static int limitFirst(ContactSeen a, ContactSeen b) {
    int other =
        Boolean.compare(
            a.contact().role().limitOf().isEmpty(), b.contact().role().limitOf().isEmpty());
    return other != 0 ? other : Integer.compare(a.index(), b.index());
  }

  private List<Stroke> silent(List<ContactSeen> mine) {
    return mine.isEmpty()
        ? List.of()
        : missed.get(mine.get(0).index()).stream()
            .filter(m -> m.by() == Missed.By.CAM)
            .map(Missed::stroke)
            .toList();
  }

  private ContactJudgement contact(ContactSeen seen, List<CamJudgement> cams) {
    List<Missed> gone = missed.get(seen.index());
    List<Overlap> overlaps = overlaps(seen);
    Optional<Estimate> offCam = offCam(seen, cams);
    List<Away> away = new Strangers(development, targets, setting).of(seen);
    Optional<Contact> other = exchangedWith(seen.index());
    boolean wrong = ContactJudgement.isWrong(seen, other, gone, overlaps, offCam, away);
    boolean exercised = seen.exercised(wiring.lines().get(seen.index()).edges());
    Settling settling = Settling.of(development, setting, seen.observed().channel());
    return new ContactJudgement(
        seen,
        other,
        exercised,
        gone,
        overlaps,
        offCam,
        away,
        settling.worstS(),
        settling.certainS(),
        wrong && trust.holds()
            ? Decision.REJECT
            : exercised && trust.holds() ? Decision.ACCEPT : Decision.UNDECIDED);
  }

  private Optional<Contact> exchangedWith(int index) {
    return wiring.exchanges().stream()
        .filter(e -> e.first() == index || e.second() == index)
        .map(e -> sheet.contacts().get(e.first() == index ? e.second() : e.first()))
        .findFirst();
  }

  private List<Overlap> overlaps(ContactSeen seen) {
    ChartLine line = wiring.lines().get(seen.index());
    if (seen.sense() == ContactSeen.Sense.OPPOSED) {
      return List.of();
    }
    return contacts.stream()
        .filter(c -> c.sense() == ContactSeen.Sense.AS_CHARTED)
        .filter(c -> line.oppositeOf(wiring.lines().get(c.index())))
        .flatMap(c -> Overlap.between(seen, c, new Flutter(development)).stream())
        .toList();
  }

  /** Beyond the cam's tolerance away from its reference contact, in the same direction. */
  private Optional<Estimate> offCam(ContactSeen seen, List<CamJudgement> cams) {
    return cams.stream()
        .filter(c -> c.target().cam().equals(seen.contact().cam()))
        .filter(c -> c.reference().filter(r -> r.index() != seen.index()).isPresent())
        .flatMap(c -> offCam(seen, c).stream())
        .findFirst();
  }

  private static Optional<Estimate> offCam(ContactSeen seen, CamJudgement cam) {
    Direction direction = cam.target().from().approach();
    Optional<Estimate> mine = seen.place(cam.target().edge(), direction);
    Optional<Estimate> theirs = cam.judged().map(Pooled::mean);
    OptionalDouble tolerance = cam.target().toleranceTurns();
    if (mine.isEmpty() || theirs.isEmpty() || tolerance.isEmpty()) {
      return Optional.empty();
    }
    Estimate off = mine.orElseThrow().minus(theirs.orElseThrow());
    boolean beyond =
        Conformity.decide(off, tripline.measure.Limits.around(0, tolerance.getAsDouble()))
            == Decision.REJECT;
    return beyond ? Optional.of(off) : Optional.empty();
  }

  private EndJudgement end(End end) {
    Optional<ContactSeen> limit =
        contacts.stream()
            .filter(c -> c.contact().role().limitOf().filter(e -> e == end).isPresent())
            .findFirst();
    return EndJudgement.of(
        end,
        sheet.end(end),
        limit,
        Targets.stop(development.coordinate(), sheet, end),
        development.strokes().stream().filter(s -> cameTo(end, s, limit)).toList(),
        trust);
  }

  /**
   * A motor stroke that came to an end: its limit contact changed, or torque or the stop held it.
   */
  private boolean cameTo(End end, Stroke stroke, Optional<ContactSeen> limit) {
    if (stroke.setting() != setting
        || stroke.drive() != Drive.MOTOR
        || stroke.direction() != end.approach()) {
      return false;
    }
    boolean changed =
        limit.stream()
            .flatMap(l -> l.tracks().stream())
            .flatMap(t -> t.crossings().stream())
            .anyMatch(c -> c.stroke().equals(stroke));
    return changed
        || stroke.stoppedBy() == StoppedBy.TORQUE
        || stroke.stoppedBy() == StoppedBy.HARD_STOP;
  }
}
