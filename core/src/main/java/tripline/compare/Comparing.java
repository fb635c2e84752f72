package tripline.compare;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tripline.job.Direction;
import tripline.job.End;
import tripline.measure.Estimate;
import tripline.result.Result.CamResult;
import tripline.result.Result.EndResult;
import tripline.result.Result.Measured;
import tripline.result.Result.TravelResult;
import tripline.travel.PartNames;

/** The steps of a comparison: subtract, count what is looked at, judge. */
final class Comparing {
  private final Account before;
  private final Account after;
  private final Kinship kinship;
  private final Budgets budgets;
  private final List<TripMove> raw;
  private final Map<Direction, Map<String, Estimate>> cams = new EnumMap<>(Direction.class);

  Comparing(Account before, Account after) {
    this.before = before;
    this.after = after;
    kinship = Kinship.of(before, after);
    budgets = new Budgets(kinship);
    raw = new TripMoves(before, after, budgets).all();
    for (Direction direction : Direction.values()) {
      cams.put(direction, perCam(direction));
    }
  }

  Comparison comparison() {
    List<EndMove> ends = Stream.of(End.values()).map(this::end).toList();
    List<CamResult> known =
        after.cams().stream().filter(c -> Cams.find(before, c).isPresent()).toList();
    Optional<Estimate> play =
        kinship.of() == Kinship.Of.APART
            ? LostMotionMove.of(before, after, budgets)
            : Optional.empty();
    Movement span = play.map(this::span).orElseGet(() -> travel(TravelResult::span));
    Movement bound = travel(TravelResult::lostMotion);
    Movement lost = play.map(bound::by).orElse(bound);
    Family trips =
        Family.of(
            Stream.concat(raw.stream().map(TripMove::move), ends.stream().map(EndMove::backoff)),
            cams.values().stream().mapToInt(Fellows::figures).sum(),
            kinship);
    Family figures =
        Family.of(
            Stream.of(
                    Stream.of(span, lost),
                    ends.stream().flatMap(e -> Stream.of(e.coast(), e.margin())),
                    known.stream().map(this::differential))
                .flatMap(s -> s),
            0,
            kinship);
    Map<Direction, Fellows> fellows = new EnumMap<>(Direction.class);
    cams.forEach((direction, moves) -> fellows.put(direction, Fellows.among(moves, trips)));
    List<TripMove> judged = raw.stream().map(t -> t.judged(trips)).toList();
    List<CamMove> camMoves =
        known.stream().map(c -> cam(c, judged, fellows, trips, figures)).toList();
    SortedMap<Direction, Estimate> together = together(fellows);
    List<SheetDifference> sheet = SheetDifferences.of(before, after);
    return new Comparison(
        before,
        after,
        camMoves,
        judged,
        ends.stream().map(e -> e.judged(trips, figures)).toList(),
        span.judged(figures),
        lost.judged(figures),
        together,
        sheet,
        new Notes(before, after, kinship, trips)
            .of(camMoves, judged, fellows, together, span.judged(figures), sheet),
        trips,
        figures);
  }

  /** Two settings of one result have one travel, measured once. */
  private Movement travel(Function<TravelResult, @Nullable Measured> figure) {
    return kinship.of() == Kinship.Of.SAME_RESULT
        ? Movement.UNKNOWN
        : move(figure.apply(before.travel()), figure.apply(after.travel()));
  }

  /** Span is the way of the handwheel from stop to stop less lost motion: each has its movement. */
  private Movement span(Estimate play) {
    Movement span = travel(TravelResult::span);
    Measured then = before.travel().span();
    Measured now = after.travel().span();
    if (span.by().isEmpty() || then == null || now == null) {
      return span;
    }
    Estimate wayThen = budgets.beforeBut(then, PartNames.PLAY).plus(lost(before));
    Estimate wayNow = budgets.afterBut(now, PartNames.PLAY).plus(lost(after));
    return span.by(wayNow.minus(wayThen).minus(play));
  }

  private static double lost(Account account) {
    Measured lost = account.travel().lostMotion();
    return lost == null ? 0 : lost.value();
  }

  /** Movement of each trip point of a cam in one direction, wherever x counts from. */
  private Map<String, Estimate> perCam(Direction direction) {
    Map<String, Estimate> moves = new LinkedHashMap<>();
    for (CamResult cam : after.cams()) {
      trip(cam, direction, raw)
          .flatMap(t -> t.move().raw())
          .ifPresent(by -> moves.put(Cams.name(cam), by));
    }
    return moves;
  }

  /** The contact that a cam's trip point is read from: seen in both results, on the same cam. */
  private Optional<TripMove> trip(CamResult cam, Direction direction, List<TripMove> trips) {
    return trips.stream()
        .filter(t -> t.tripPoint().equals(Cams.name(cam)) && t.direction() == direction)
        .filter(t -> t.move().raw().isPresent())
        .filter(t -> before.contact(t.contact()).filter(c -> c.cam().equals(t.cam())).isPresent())
        .min(Comparator.comparing(t -> !isLimit(t)));
  }

  private boolean isLimit(TripMove trip) {
    return after.contact(trip.contact()).filter(c -> c.role().startsWith("limit-")).isPresent();
  }

  private CamMove cam(
      CamResult now,
      List<TripMove> judged,
      Map<Direction, Fellows> fellows,
      Family trips,
      Family figures) {
    Direction approach = now.from().equals(End.OPEN.word()) ? Direction.OPENING : Direction.CLOSING;
    Optional<TripMove> trip = trip(now, approach, judged);
    Optional<Estimate> against =
        Optional.ofNullable(fellows.get(approach)).flatMap(f -> f.against(Cams.name(now)));
    Seen absolute = trip.map(t -> t.move().seen()).orElse(Seen.NOT_KNOWN);
    Seen relative = trips.seen(against);
    boolean moved = absolute == Seen.MOVED || relative == Seen.MOVED;
    return new CamMove(
        Cams.find(before, now).orElseThrow(),
        now,
        trip,
        against,
        moved ? Seen.MOVED : absolute,
        differential(now).judged(figures));
  }

  private Movement differential(CamResult now) {
    return move(
        Cams.find(before, now).map(CamResult::differential).orElse(null), now.differential());
  }

  private EndMove end(End end) {
    EndResult then = before.end(end);
    EndResult now = after.end(end);
    return new EndMove(
        end,
        then,
        now,
        fromStop(then.backoff().estimate(), now.backoff().estimate()),
        move(then.coast(), now.coast()),
        fromStop(then.margin(), now.margin()));
  }

  private Movement fromStop(@Nullable Measured then, @Nullable Measured now) {
    Movement move = move(then, now);
    return Origin.of(before, after).isRegistered() ? move.incomparable() : move;
  }

  private Movement move(@Nullable Measured then, @Nullable Measured now) {
    return Movement.of(
        Optional.ofNullable(then).map(budgets::before),
        Optional.ofNullable(now).map(budgets::after));
  }

  private SortedMap<Direction, Estimate> together(Map<Direction, Fellows> fellows) {
    SortedMap<Direction, Estimate> together = new TreeMap<>();
    if (Origin.of(before, after).isCommon()) {
      fellows.forEach((d, f) -> f.together().ifPresent(by -> together.put(d, by)));
    }
    return together;
  }
}
