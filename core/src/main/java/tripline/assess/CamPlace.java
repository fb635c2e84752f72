package tripline.assess;

import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import tripline.job.Direction;

/**
 * About where a trip point of a cam lies, by whichever of its contacts changed: to recognise the
 * strokes that passed it.
 *
 * @param x turns
 * @param clearanceTurns a stroke that ends nearer than this may not have passed it
 * @param known by what
 */
record CamPlace(double x, double clearanceTurns, By known) {
  /** What a place is known by. */
  enum By {
    /** A contact of the cam changed there. */
    CHANGES,
    /** The sheet alone. */
    SHEET
  }

  private static final double LEAST_CLEARANCE_TURNS = 0.05;
  private static final double NOMINAL_TOLERANCES = 3;

  /** By the contacts seen, else by the sheet; empty where neither says. */
  static Optional<CamPlace> of(TripTarget target, List<ContactSeen> contacts, Direction direction) {
    double[] seen = places(target, contacts, direction);
    if (seen.length == 0) {
      seen = places(target, contacts, direction.other());
    }
    if (seen.length > 0) {
      double range =
          contacts.stream()
              .flatMap(c -> c.track(target.edge()).stream())
              .mapToDouble(Track::range)
              .max()
              .orElse(0);
      return Optional.of(
          new CamPlace(
              seen[seen.length / 2], Math.max(LEAST_CLEARANCE_TURNS, 2 * range), By.CHANGES));
    }
    if (target.nominalX().isEmpty()) {
      return Optional.empty();
    }
    double tolerance = target.toleranceTurns().orElse(0);
    return Optional.of(
        new CamPlace(target.nominalX().getAsDouble(), NOMINAL_TOLERANCES * tolerance, By.SHEET));
  }

  private static double[] places(
      TripTarget target, List<ContactSeen> contacts, Direction direction) {
    return contacts.stream()
        .filter(c -> c.contact().cam().equals(target.cam()))
        .flatMap(c -> c.place(target.edge(), direction).stream())
        .flatMapToDouble(e -> DoubleStream.of(e.value()))
        .sorted()
        .toArray();
  }
}
