package tripline.accept;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tripline.assess.Assessment;
import tripline.assess.CamJudgement;
import tripline.assess.ContactJudgement;
import tripline.assess.ContactSeen;
import tripline.assess.SettingJudgement;
import tripline.assess.Track;
import tripline.develop.Development;
import tripline.job.Acceptance;
import tripline.job.Direction;
import tripline.measure.Decision;
import tripline.measure.Repeatability;

/**
 * The judged setting over its full strokes.
 *
 * @param asked what the sheet asks for
 * @param opening full strokes opening
 * @param closing full strokes closing
 * @param series every contact at every trip point of its cam in both directions, sheet order; those
 *     that were never seen left out
 * @param trips every trip point on the approach it is judged on, cams in sheet order
 * @param standOuts outliers and movements that a reader should look at
 * @param repeatability pooled over the trip points, one contact each, both directions about their
 *     own means
 * @param unequal whether one of them scatters more than its fellows; empty below two series
 */
public record SettingAcceptance(
    Acceptance asked,
    int opening,
    int closing,
    List<TripSeries> series,
    List<TripAcceptance> trips,
    List<StandOut> standOuts,
    Repeatability repeatability,
    Optional<Unequal> unequal) {

  public SettingAcceptance {
    series = List.copyOf(series);
    trips = List.copyOf(trips);
    standOuts = List.copyOf(standOuts);
  }

  /** Acceptance of the setting that counts. */
  public static SettingAcceptance of(Assessment assessment) {
    Development development = assessment.development();
    SettingJudgement judged = assessment.judged();
    List<FullStroke> strokes = FullStroke.of(development, judged.number());
    List<TripSeries> series = new ArrayList<>();
    for (ContactJudgement contact : judged.contacts()) {
      for (Track track : contact.seen().tracks()) {
        for (Direction direction : Direction.values()) {
          TripSeries one = TripSeries.of(contact.seen(), track, direction, strokes);
          if (one.n() + one.aside().size() > 0) {
            series.add(one);
          }
        }
      }
    }
    List<TripAcceptance> trips = new ArrayList<>();
    List<TripSeries> references = new ArrayList<>();
    for (CamJudgement cam : judged.cams()) {
      List<TripSeries> mine = of(cam, series);
      references.addAll(mine.stream().filter(s -> s.n() > 0).toList());
      trips.add(trip(assessment, cam, mine));
    }
    return new SettingAcceptance(
        assessment.sheet().acceptance(),
        count(strokes, Direction.OPENING),
        count(strokes, Direction.CLOSING),
        series,
        trips,
        StandOut.of(series, trips),
        Repeatability.pooled(references.stream().map(TripSeries::moments).toList()),
        Unequal.of(references));
  }

  private static int count(List<FullStroke> strokes, Direction direction) {
    return (int) strokes.stream().filter(s -> s.direction() == direction).count();
  }

  /** Both directions of a trip point, by the contact it is judged by. */
  private static List<TripSeries> of(CamJudgement cam, List<TripSeries> series) {
    return series.stream()
        .filter(s -> s.edge() == cam.target().edge())
        .filter(s -> cam.reference().filter(r -> r.index() == s.contact().index()).isPresent())
        .toList();
  }

  private static TripAcceptance trip(
      Assessment assessment, CamJudgement cam, List<TripSeries> mine) {
    Direction approach = cam.target().from().approach();
    boolean limit =
        cam.reference()
            .map(ContactSeen::contact)
            .flatMap(c -> c.role().limitOf())
            .filter(end -> end == cam.target().from())
            .isPresent();
    return TripAcceptance.of(
        new TripAcceptance.Evidence(
            cam.target(),
            assessment.judged().isWired(cam),
            mine.stream().filter(s -> s.direction() == approach).findFirst(),
            mine.stream().filter(s -> s.direction() != approach).findFirst(),
            TripLimits.of(cam.target(), limit, assessment.development()),
            assessment.sheet().acceptance(),
            assessment.trust().holds()));
  }

  /** Full strokes in one direction. */
  public int strokes(Direction direction) {
    return direction == Direction.OPENING ? opening : closing;
  }

  /** Strokes of one direction that are missing to the number asked for. */
  public int missing(Direction direction) {
    return Math.max(0, asked.strokes() - strokes(direction));
  }

  /**
   * Decision over the strokes alone: every trip point that is wired, and strokes enough each way.
   */
  public Decision decision() {
    Decision decision =
        opening < asked.strokes() || closing < asked.strokes()
            ? Decision.UNDECIDED
            : Decision.ACCEPT;
    for (TripAcceptance trip : trips) {
      decision = trip.required() ? decision.and(trip.decision()) : decision;
    }
    return decision;
  }
}
