package tripline.travel;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tripline.job.Direction;
import tripline.job.JobSheet;
import tripline.job.SensorSide;
import tripline.measure.Estimate;
import tripline.measure.Part;
import tripline.measure.Shape;

/**
 * Lost motion from both directions: a cam's opening and closing change positions differ by the lost
 * motion, which is common to every cam, and by the cam's own differential, which is never negative.
 * The two are separable only up to a constant, so the smallest difference over the cams bounds the
 * lost motion from above; cams whose difference cannot be told from the smallest are pooled with
 * it.
 *
 * <p>With the sensor on the drive side lost motion shows as nothing, or with the opposite sign
 * where play lies between the cams and the sensor: there only a negative difference is lost motion.
 */
final class LostMotion {
  /** No two changes of one trip point there and back are further apart than this, turns. */
  private static final double MOST_TURNS = 1.0;

  /** Differences closer than this many standard uncertainties cannot be told apart. */
  private static final double ALIKE = 2;

  /**
   * The most a handwheel loses before the drive follows, where the sheet says nothing (common
   * practice).
   */
  private static final double USUAL_MOST_TURNS = 0.5;

  private LostMotion() {}

  /**
   * Lost motion as the sensor sees it, turns; empty where no contact was seen in both directions.
   */
  static Optional<Estimate> measured(Survey survey, List<Landmark> landmarks) {
    List<Estimate> differences = perCam(survey, landmarks);
    if (differences.isEmpty()) {
      return Optional.empty();
    }
    Estimate smallest = smallest(differences);
    boolean drive = survey.sheet().position().side() == SensorSide.DRIVE;
    return Optional.of(
        drive && smallest.value() > 0 ? new Estimate(0, smallest.parts()) : smallest);
  }

  /** What opening positions on the handwheel side are reduced by: one error for all of them. */
  static Estimate play(JobSheet sheet, Optional<Estimate> measured) {
    if (sheet.position().side() == SensorSide.DRIVE) {
      return Estimate.exact(0);
    }
    return measured.map(m -> Pool.shared(m, PartNames.PLAY)).orElseGet(() -> assumed(sheet));
  }

  private static Estimate assumed(JobSheet sheet) {
    double half = sheet.travel().lostMotionTurns().orElse(USUAL_MOST_TURNS) / 2;
    return Estimate.of(
        half, Part.common(PartNames.PLAY_ASSUMED, half / Math.sqrt(3), Shape.RECTANGULAR));
  }

  private static List<Estimate> perCam(Survey survey, List<Landmark> landmarks) {
    Map<String, List<Estimate>> byCam = new LinkedHashMap<>();
    for (Landmark opening : landmarks) {
      if (opening.direction() == Direction.OPENING && isMain(opening, landmarks)) {
        wayBack(opening, landmarks)
            .ifPresent(
                closing ->
                    byCam
                        .computeIfAbsent(tripPoint(survey, opening), k -> new ArrayList<>())
                        .add(opening.turns().minus(closing.turns())));
      }
    }
    return byCam.values().stream().map(Estimate::weightedMean).toList();
  }

  /** Not a place beside the true one, as an intermittent contact makes. */
  private static boolean isMain(Landmark landmark, List<Landmark> all) {
    return all.stream()
        .noneMatch(
            other ->
                other.frame() == landmark.frame()
                    && other.matches(landmark)
                    && other.strokes() >= landmark.strokes()
                    && (other.strokes() > landmark.strokes()
                        || nearness(other, all) < nearness(landmark, all)));
  }

  private static double nearness(Landmark opening, List<Landmark> all) {
    return wayBack(opening, all)
        .map(closing -> Math.abs(opening.turns().value() - closing.turns().value()))
        .orElse(Double.POSITIVE_INFINITY);
  }

  private static Optional<Landmark> wayBack(Landmark opening, List<Landmark> all) {
    return all.stream()
        .filter(closing -> closing.isWayBackOf(opening))
        .filter(c -> apart(opening, c) < MOST_TURNS)
        .min((a, b) -> Double.compare(apart(opening, a), apart(opening, b)));
  }

  private static double apart(Landmark a, Landmark b) {
    return Math.abs(a.turns().value() - b.turns().value());
  }

  /**
   * A window cam has two trip points, told apart by the sense in which its contacts change there.
   */
  private static String tripPoint(Survey survey, Landmark landmark) {
    return survey
        .channels()
        .contact(landmark.channel())
        .map(
            contact ->
                switch (contact.closed()) {
                  case INSIDE -> contact.cam() + "/" + landmark.to();
                  case OUTSIDE -> contact.cam() + "/" + landmark.to().other();
                  default -> contact.cam();
                })
        .orElse("");
  }

  private static Estimate smallest(List<Estimate> differences) {
    List<Estimate> sorted =
        differences.stream().sorted((a, b) -> Double.compare(a.value(), b.value())).toList();
    List<Estimate> alike = new ArrayList<>(List.of(sorted.get(0)));
    Estimate pooled = sorted.get(0);
    for (Estimate next : sorted.subList(1, sorted.size())) {
      double u = Math.hypot(next.ownU(), pooled.ownU());
      if (next.value() - pooled.value() > ALIKE * u) {
        break;
      }
      alike.add(next);
      pooled = Estimate.weightedMean(alike);
    }
    return pooled;
  }
}
