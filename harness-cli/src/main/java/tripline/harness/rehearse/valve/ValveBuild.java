package tripline.harness.rehearse.valve;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import tripline.job.Contact;
import tripline.job.End;
import tripline.job.JobSheet;
import tripline.job.PositionChannel;
import tripline.job.Seat;

/**
 * A valve actuator as built: what a job sheet charts, with the small differences that every real
 * one has.
 *
 * @param sheet what it was built after
 * @param spanTurns travel between the hard stops
 * @param lostMotionTurns play between handwheel and drive
 * @param cams in the order of the sheet
 * @param contacts in the order of the sheet
 * @param sensor its position sensor
 * @param contactDelayNs from a contact's change to its stamp, ns, &gt;= 0
 * @param motor its drive
 * @param hand who turns its handwheel
 * @param startTurns x at the begin
 */
public record ValveBuild(
    JobSheet sheet,
    double spanTurns,
    double lostMotionTurns,
    List<CamBuild> cams,
    List<ContactBuild> contacts,
    SensorBuild sensor,
    long contactDelayNs,
    MotorBuild motor,
    HandBuild hand,
    double startTurns) {

  /** Span where the sheet states none, turns. */
  private static final double USUAL_SPAN = 30;

  /** Count where the sheet states none: 12 bits a unit. */
  private static final double USUAL_COUNT = 1.0 / 4096;

  public ValveBuild {
    cams = List.copyOf(cams);
    contacts = List.copyOf(contacts);
  }

  /** Builds what the sheet charts; the same sheet, setting and seed build the same valve. */
  public static ValveBuild of(JobSheet sheet, Setting setting, long seed) {
    Chance chance = new Chance(seed).split("build");
    double slack = sheet.travel().spanToleranceTurns().orElse(0.2);
    double nominal = sheet.travel().spanTurns().orElse(USUAL_SPAN);
    double span = nominal + chance.uniform(-0.4, 0.4) * Math.min(slack, 0.02 * nominal);
    double most = sheet.travel().lostMotionTurns().orElse(0.5);
    List<CamBuild> cams = CamSetting.build(sheet, span, setting, chance.split("cams"));
    Chance contactChance = chance.split("contacts");
    List<ContactBuild> contacts = new ArrayList<>();
    for (Contact contact : sheet.contacts()) {
      contacts.add(
          new ContactBuild(contact, camOf(sheet, contact), 0.01 * contactChance.uniform(0.6, 1.4)));
    }
    PositionChannel position = sheet.position();
    return new ValveBuild(
        sheet,
        span,
        most * chance.uniform(0.45, 0.7),
        cams,
        contacts,
        sensor(position, span, chance.split("sensor")),
        Math.max(0, -position.skewNs()),
        MotorBuild.usual(speed(sheet, span), torqueSeated(sheet)),
        HandBuild.somebody(chance.split("hand")),
        span * chance.uniform(0.35, 0.65));
  }

  /** Index of a cam, or -1. */
  public int camIndex(String name) {
    for (int i = 0; i < cams.size(); i++) {
      if (cams.get(i).name().equals(name)) {
        return i;
      }
    }
    return -1;
  }

  /** Where the hard stop of an end is, x. */
  double stopTurns(End end) {
    return end == End.CLOSED ? 0 : spanTurns;
  }

  private static int camOf(JobSheet sheet, Contact contact) {
    for (int i = 0; i < sheet.cams().size(); i++) {
      if (sheet.cams().get(i).name().equals(contact.cam())) {
        return i;
      }
    }
    throw new IllegalArgumentException("no cam " + contact.cam());
  }

  private static Set<End> torqueSeated(JobSheet sheet) {
    Set<End> seated = EnumSet.noneOf(End.class);
    for (End end : End.values()) {
      if (sheet.end(end).seat() == Seat.TORQUE) {
        seated.add(end);
      }
    }
    return seated;
  }

  private static double speed(JobSheet sheet, double span) {
    double time = sheet.travel().strokeTimeS().orElse(span / 0.7);
    double way = span - sheet.end(End.CLOSED).backoffTurns() - sheet.end(End.OPEN).backoffTurns();
    return way / time;
  }

  private static SensorBuild sensor(PositionChannel position, double span, Chance chance) {
    double count = position.resolution() > 0 ? position.resolution() : USUAL_COUNT;
    Fraction scale = Fraction.near(count);
    double countTurns = count * Math.abs(position.turnsPerUnit());
    long modulus = Math.round(position.modulus().orElse(0) / count);
    double sign = Math.signum(position.turnsPerUnit());
    return new SensorBuild(
        position.side(),
        position.turnsPerUnit(),
        scale.numerator(),
        scale.denominator(),
        modulus,
        Math.min(0.002, Math.max(0.0005, 0.5 * countTurns)),
        sign * chance.uniform(1, 4) + (sign < 0 ? -span : 0),
        Math.max(0, position.skewNs()));
  }
}
