package tripline.compare;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import tripline.measure.Estimate;

/**
 * Cams against each other in one direction of travel. A hard stop felt anew shifts all of them by
 * one error, which is most of what a movement is uncertain by; between cams it cancels.
 *
 * <p>The fellows are the largest group that stayed together: none of it moved against the mean of
 * the others in it beyond chance. (Points that did not move are so chosen where the deformation of
 * a structure is surveyed; common practice there.) They are at least {@value #LEAST} and more than
 * half of all; else nobody can say who moved.
 */
final class Fellows {
  static final int LEAST = 3;

  private final Map<String, Estimate> moves;
  private final List<String> stayed;

  private Fellows(Map<String, Estimate> moves, List<String> stayed) {
    this.moves = moves;
    this.stayed = List.copyOf(stayed);
  }

  /** How many movements against each other there are to look at. */
  static int figures(Map<String, Estimate> moves) {
    return moves.size() >= LEAST ? moves.size() : 0;
  }

  /**
   * Finds who stayed together.
   *
   * @param moves movement of each trip point, by name
   * @param family what they are judged with
   */
  static Fellows among(Map<String, Estimate> moves, Family family) {
    Map<String, Estimate> all = new LinkedHashMap<>(moves);
    // Whoever lies between two that stayed has stayed too: a group is a run in order of size.
    List<String> inOrder =
        all.entrySet().stream()
            .sorted(Comparator.comparingDouble(e -> e.getValue().value()))
            .map(Map.Entry::getKey)
            .toList();
    for (int size = inOrder.size(); size >= LEAST && 2 * size > inOrder.size(); size--) {
      int members = size;
      Optional<Fellows> group =
          IntStream.rangeClosed(0, inOrder.size() - size)
              .mapToObj(from -> new Fellows(all, inOrder.subList(from, from + members)))
              .filter(f -> f.holdsTogether(family))
              .min(Comparator.comparingDouble(Fellows::width));
      if (group.isPresent()) {
        return group.get();
      }
    }
    return new Fellows(all, List.of());
  }

  private boolean holdsTogether(Family family) {
    return stayed.stream().flatMap(n -> against(n).stream()).noneMatch(family::isMoved);
  }

  private double width() {
    return move(stayed.get(stayed.size() - 1)).value() - move(stayed.get(0)).value();
  }

  /** How a trip point moved against the mean of those that stayed; empty where nobody can say. */
  Optional<Estimate> against(String name) {
    List<Estimate> others = stayed.stream().filter(n -> !n.equals(name)).map(this::move).toList();
    return !moves.containsKey(name) || others.size() < LEAST - 1
        ? Optional.empty()
        : Optional.of(move(name).minus(Estimate.weightedMean(others)));
  }

  /** Movement that those who stayed together share; empty where nobody can say. */
  Optional<Estimate> together() {
    return stayed.isEmpty()
        ? Optional.empty()
        : Optional.of(Estimate.weightedMean(stayed.stream().map(this::move).toList()));
  }

  /** There are enough of them, and too few stayed together. */
  boolean scattered() {
    return figures(moves) > 0 && stayed.isEmpty();
  }

  /** Names of those that stayed together. */
  List<String> stayed() {
    return stayed;
  }

  private Estimate move(String name) {
    return Objects.requireNonNull(moves.get(name), name);
  }
}
