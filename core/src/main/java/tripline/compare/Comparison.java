package tripline.compare;

import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import tripline.job.Direction;
import tripline.job.End;
import tripline.measure.Estimate;

/**
 * Two accounts of one valve: what moved, by how much, and whether that is beyond doubt.
 *
 * @param before the earlier one
 * @param after the later one
 * @param cams trip points that both know, in the later result's order
 * @param trips the same contact by contact and direction by direction
 * @param ends both ends
 * @param span distance between the hard stops, turns
 * @param lostMotion turns
 * @param together movement that the cams share in each direction, turns; without those where too
 *     few stayed together, or x counts from different places
 * @param sheet what the job sheets want differently
 * @param notes what a reader should know before he believes it, in order of weight
 * @param tripFamily trip points and backoffs, which say together whether anything moved
 * @param figureFamily coast, margin, span, lost motion and differentials
 */
public record Comparison(
    Account before,
    Account after,
    List<CamMove> cams,
    List<TripMove> trips,
    List<EndMove> ends,
    Movement span,
    Movement lostMotion,
    SortedMap<Direction, Estimate> together,
    List<SheetDifference> sheet,
    List<Note> notes,
    Family tripFamily,
    Family figureFamily) {

  public Comparison {
    cams = List.copyOf(cams);
    trips = List.copyOf(trips);
    ends = List.copyOf(ends);
    sheet = List.copyOf(sheet);
    notes = List.copyOf(notes);
  }

  /**
   * Why two accounts cannot be compared; empty where they can.
   *
   * <p>Another valve; a sensor on the other side of the lost motion, which shows opening positions
   * elsewhere; another unit of reading; no contact in common.
   */
  public static Optional<String> refusal(Account before, Account after) {
    return Refusal.of(before, after);
  }

  /**
   * Compares.
   *
   * @throws IllegalArgumentException if {@link #refusal} has a reason
   */
  public static Comparison of(Account before, Account after) {
    refusal(before, after)
        .ifPresent(
            why -> {
              throw new IllegalArgumentException(why);
            });
    return new Comparing(before, after).comparison();
  }

  /** Whether any trip point or backoff moved; not known where a cam's trip point is not. */
  public Seen answer() {
    boolean moved =
        cams.stream().anyMatch(c -> c.seen() == Seen.MOVED)
            || trips.stream().anyMatch(t -> t.move().seen() == Seen.MOVED)
            || ends.stream().anyMatch(e -> e.backoff().seen() == Seen.MOVED);
    boolean known = !cams.isEmpty() && cams.stream().allMatch(c -> c.seen() != Seen.NOT_KNOWN);
    return moved ? Seen.MOVED : known ? Seen.NO_MOVE : Seen.NOT_KNOWN;
  }

  /** What is said of an end. */
  public EndMove end(End end) {
    return ends.get(end == End.CLOSED ? 0 : 1);
  }
}
