package tripline.cases;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import tripline.job.Cam;
import tripline.job.ClosedWhere;
import tripline.job.Contact;
import tripline.job.End;
import tripline.job.JobSheet;
import tripline.job.TripPlan;
import tripline.truth.ActuatorPlan;
import tripline.truth.Auxiliaries;
import tripline.truth.CamPlan;
import tripline.truth.ContactPlan;
import tripline.truth.Rng;

/**
 * An actuator built to a job sheet, as well as fitters do it: trip points within a quarter of their
 * tolerance.
 */
public final class Built {
  private static final double MAKE_DELAY = 0.02;

  private Built() {}

  public static ActuatorPlan to(JobSheet sheet, double spanTurns, double lostMotion, Rng rng) {
    List<CamPlan> cams = new ArrayList<>();
    for (Cam cam : sheet.cams()) {
      double differential = rng.uniform(0.005, 0.025);
      List<Double> trips = new ArrayList<>();
      for (TripPlan trip : trips(sheet, cam)) {
        double error = 0.25 * trip.toleranceTurns(spanTurns) * rng.uniform(-1, 1);
        double at = trip.positionTurns(spanTurns) + error;
        trips.add(trip.from() == End.CLOSED ? at : at - differential);
      }
      cams.add(new CamPlan(cam.name(), trips, differential, 0, 0));
    }
    List<ContactPlan> contacts = new ArrayList<>();
    for (Contact c : sheet.contacts()) {
      double delay = bothSenses(sheet, c.cam()) ? MAKE_DELAY : 0;
      contacts.add(
          new ContactPlan(
              c.name(),
              c.channel(),
              c.cam(),
              c.closed(),
              c.role(),
              delay,
              ContactPlan.Wiring.SOUND));
    }
    Auxiliaries aux =
        new Auxiliaries(
            sheet.torqueClosing().orElse(""),
            sheet.torqueOpening().orElse(""),
            sheet.motorClosing().orElse(""),
            sheet.motorOpening().orElse(""),
            Auxiliaries.NONE.torqueTripTurns());
    return new ActuatorPlan(spanTurns, lostMotion, cams, contacts, aux);
  }

  /**
   * Intended trip points of a cam; its end's backoff where it carries a limit contact and states
   * none.
   */
  public static List<TripPlan> trips(JobSheet sheet, Cam cam) {
    if (!cam.trips().isEmpty()) {
      return cam.trips();
    }
    End end =
        sheet.contacts().stream()
            .filter(c -> c.cam().equals(cam.name()))
            .flatMap(c -> c.role().limitOf().stream())
            .findFirst()
            .orElseThrow();
    return List.of(
        new TripPlan(
            end,
            sheet.end(end).backoffTurns(),
            sheet.end(end).toleranceTurns(),
            TripPlan.Unit.TURNS));
  }

  private static boolean bothSenses(JobSheet sheet, String cam) {
    Set<ClosedWhere> senses = new HashSet<>();
    sheet.contacts().stream().filter(c -> c.cam().equals(cam)).forEach(c -> senses.add(c.closed()));
    return senses.size() > 1;
  }
}
