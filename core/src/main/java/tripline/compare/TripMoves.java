package tripline.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import tripline.job.Direction;
import tripline.result.Result.ContactResult;
import tripline.result.Result.TripResult;

/** Contacts of both results, trip point by trip point. */
final class TripMoves {
  private final Account before;
  private final Account after;
  private final Budgets budgets;
  private final Origin origin;

  TripMoves(Account before, Account after, Budgets budgets) {
    this.before = before;
    this.after = after;
    this.budgets = budgets;
    this.origin = Origin.of(before, after);
  }

  /** Contacts in the order of the later result; those that only one result has are left out. */
  List<TripMove> all() {
    List<TripMove> all = new ArrayList<>();
    for (ContactResult now : after.contacts()) {
      before.contact(now.contact()).ifPresent(then -> all.addAll(of(then, now)));
    }
    return all;
  }

  private List<TripMove> of(ContactResult then, ContactResult now) {
    List<Optional<String>> edges =
        Stream.concat(now.trips().stream(), then.trips().stream())
            .map(t -> Optional.ofNullable(t.edge()))
            .distinct()
            .toList();
    List<TripMove> all = new ArrayList<>();
    for (Optional<String> edge : edges) {
      for (Direction direction : Direction.values()) {
        Optional<TripResult> was = trip(then, edge, direction);
        Optional<TripResult> is = trip(now, edge, direction);
        if (was.isPresent() || is.isPresent()) {
          all.add(move(now, edge, direction, was, is));
        }
      }
    }
    return all;
  }

  private static Optional<TripResult> trip(
      ContactResult contact, Optional<String> edge, Direction direction) {
    return contact.trips().stream()
        .filter(t -> Objects.equals(t.edge(), edge.orElse(null)))
        .filter(t -> t.direction().equals(direction.word()))
        .findFirst();
  }

  private TripMove move(
      ContactResult contact,
      Optional<String> edge,
      Direction direction,
      Optional<TripResult> was,
      Optional<TripResult> is) {
    Movement move =
        Movement.of(
                was.map(t -> budgets.before(t.position())),
                is.map(t -> budgets.after(t.position())))
            .less(origin.shift());
    boolean turned = was.isPresent() && is.isPresent() && !was.get().to().equals(is.get().to());
    return new TripMove(
        contact.contact(),
        contact.cam(),
        edge,
        direction,
        origin.isCommon() ? move : move.incomparable(),
        strokes(was),
        strokes(is),
        turned);
  }

  private static int strokes(Optional<TripResult> trip) {
    return trip.map(TripResult::strokes).orElse(0);
  }
}
