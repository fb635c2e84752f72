package tripline.develop;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tripline.job.ClosedWhere;
import tripline.job.Contact;
import tripline.job.Direction;
import tripline.job.SensorSide;
import tripline.measure.Estimate;
import tripline.sample.ContactState;
import tripline.travel.Places;
import tripline.travel.Pool;

/** Own differential of every cam of one setting that was seen to change in both directions. */
public final class CamDifferentials {
  /** Changes further apart than this are not there and back of one trip point, turns. */
  private static final double MOST_TURNS = 1.0;

  private record TripPoint(String cam, int edge) {}

  private CamDifferentials() {}

  /** In sheet order. */
  public static List<CamDifferential> of(Development development, int setting) {
    Map<TripPoint, List<Estimate>> found = new LinkedHashMap<>();
    for (Contact contact : development.sheet().contacts()) {
      int channel = development.sheet().channels().indexOf(contact.channel());
      for (ContactState opensTo : ContactState.values()) {
        difference(development, setting, channel, opensTo)
            .ifPresent(
                difference ->
                    found
                        .computeIfAbsent(
                            new TripPoint(contact.cam(), edge(contact.closed(), opensTo)),
                            k -> new ArrayList<>())
                        .add(difference));
      }
    }
    double opposite = opposite(development);
    List<CamDifferential> result = new ArrayList<>();
    found.forEach(
        (point, all) ->
            result.add(
                new CamDifferential(
                    point.cam, point.edge, Estimate.weightedMean(all).plus(-opposite))));
    return result;
  }

  /**
   * On the drive side x is not reduced by play: what there is of it (negative) is taken off here.
   */
  private static double opposite(Development development) {
    return development.sheet().position().side() == SensorSide.DRIVE
        ? development.coordinate().lostMotion().map(Estimate::value).orElse(0.0)
        : 0;
  }

  private static int edge(ClosedWhere closed, ContactState opensTo) {
    return switch (closed) {
      case INSIDE -> opensTo == ContactState.CLOSED ? 0 : 1;
      case OUTSIDE -> opensTo == ContactState.OPEN ? 0 : 1;
      case OPEN_SIDE, CLOSED_SIDE -> 0;
    };
  }

  private static Optional<Estimate> difference(
      Development development, int setting, int channel, ContactState opensTo) {
    List<List<Estimate>> opening =
        places(development, setting, channel, Direction.OPENING, opensTo);
    List<List<Estimate>> closing =
        places(development, setting, channel, Direction.CLOSING, opensTo.other());
    Optional<Estimate> best = Optional.empty();
    int strokes = 0;
    for (List<Estimate> there : opening) {
      for (List<Estimate> back : closing) {
        Estimate difference = Pool.repeated(there).minus(Pool.repeated(back));
        int seen = Math.min(there.size(), back.size());
        boolean nearer =
            best.isEmpty() || Math.abs(difference.value()) < Math.abs(best.get().value());
        if (Math.abs(difference.value()) < MOST_TURNS
            && (seen > strokes || (seen == strokes && nearer))) {
          best = Optional.of(difference);
          strokes = seen;
        }
      }
    }
    return best;
  }

  private static List<List<Estimate>> places(
      Development development, int setting, int channel, Direction direction, ContactState to) {
    return Places.of(
        development.trips(channel, setting).stream()
            .filter(t -> t.to() == to && t.direction().equals(Optional.of(direction)))
            .flatMap(t -> t.x().stream())
            .toList());
  }
}
