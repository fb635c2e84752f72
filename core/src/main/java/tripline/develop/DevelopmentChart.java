package tripline.develop;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.DoubleFunction;
import tripline.job.Direction;
import tripline.sample.ContactState;

/**
 * The development as built, of one setting: for every contact and direction the stretches of x over
 * which it was seen open and closed. What no stroke exercised is unknown and never guessed.
 *
 * <p>A trip point that moves a little from stroke to stroke is drawn once, at its mean; where
 * strokes disagree over more than {@value #ONE_TRIP_TURNS} turns the stretch says that it varies.
 */
public final class DevelopmentChart {
  private static final double ONE_TRIP_TURNS = 0.1;

  private final Development development;
  private final int setting;

  private DevelopmentChart(Development development, int setting) {
    this.development = development;
    this.setting = setting;
  }

  /** Chart of one setting. */
  public static DevelopmentChart of(Development development, int setting) {
    return new DevelopmentChart(development, setting);
  }

  /**
   * Stretches of one contact in one direction, from low to high x, without gaps: what lies between
   * travelled parts is {@link Stretch.State#UNKNOWN}. Empty where nothing was travelled.
   *
   * @param channel channel index of the sheet
   */
  public List<Stretch> stretches(int channel, Direction direction) {
    List<Trip> trips = development.trips().stream().filter(t -> t.channel() == channel).toList();
    List<SeenRun> runs =
        development.strokes().stream()
            .filter(s -> s.setting() == setting && s.direction() == direction)
            .flatMap(s -> SeenRun.of(development, s, channel, trips).stream())
            .toList();
    TreeSet<Double> bounds = new TreeSet<>();
    for (SeenRun run : runs) {
      bounds.add(run.from());
      bounds.add(run.to());
      bounds.addAll(run.steps());
    }
    return resolved(merged(List.copyOf(bounds), x -> state(runs, x)), runs);
  }

  /** What was seen of a contact at x while travelling one way. */
  public Stretch.State at(int channel, Direction direction, double x) {
    return stretches(channel, direction).stream()
        .filter(s -> s.holds(x))
        .findFirst()
        .map(Stretch::state)
        .orElse(Stretch.State.UNKNOWN);
  }

  private static Stretch.State state(List<SeenRun> runs, double x) {
    Set<ContactState> seen = EnumSet.noneOf(ContactState.class);
    for (SeenRun run : runs) {
      Optional<ContactState> state = run.at(x);
      if (state.isPresent()) {
        seen.add(state.orElseThrow());
      }
      if (seen.size() > 1) {
        return Stretch.State.VARIES;
      }
    }
    if (seen.isEmpty()) {
      return Stretch.State.UNKNOWN;
    }
    return seen.contains(ContactState.CLOSED) ? Stretch.State.CLOSED : Stretch.State.OPEN;
  }

  private static List<Stretch> merged(List<Double> bounds, DoubleFunction<Stretch.State> stateAt) {
    List<Stretch> merged = new ArrayList<>();
    for (int i = 0; i + 1 < bounds.size(); i++) {
      double from = bounds.get(i);
      double to = bounds.get(i + 1);
      append(merged, new Stretch(from, to, stateAt.apply(from + (to - from) / 2)));
    }
    return merged;
  }

  private static void append(List<Stretch> stretches, Stretch next) {
    Stretch last = stretches.isEmpty() ? null : stretches.get(stretches.size() - 1);
    if (last != null && last.state() == next.state()) {
      stretches.set(stretches.size() - 1, new Stretch(last.from(), next.to(), next.state()));
    } else {
      stretches.add(next);
    }
  }

  /** Draws narrow stretches of disagreement between two opposite states as one trip point. */
  private static List<Stretch> resolved(List<Stretch> stretches, List<SeenRun> runs) {
    List<Stretch> resolved = new ArrayList<>();
    for (int i = 0; i < stretches.size(); i++) {
      Stretch stretch = stretches.get(i);
      if (isOneTrip(stretches, i)) {
        Stretch below = resolved.remove(resolved.size() - 1);
        Stretch above = stretches.get(i + 1);
        double trip = mean(runs, stretch);
        resolved.add(new Stretch(below.from(), trip, below.state()));
        append(resolved, new Stretch(trip, above.to(), above.state()));
        i++;
      } else {
        append(resolved, stretch);
      }
    }
    return List.copyOf(resolved);
  }

  private static boolean isOneTrip(List<Stretch> stretches, int i) {
    Stretch stretch = stretches.get(i);
    if (stretch.state() != Stretch.State.VARIES
        || stretch.to() - stretch.from() > ONE_TRIP_TURNS
        || i == 0
        || i + 1 == stretches.size()) {
      return false;
    }
    Stretch.State below = stretches.get(i - 1).state();
    Stretch.State above = stretches.get(i + 1).state();
    return (below == Stretch.State.OPEN && above == Stretch.State.CLOSED)
        || (below == Stretch.State.CLOSED && above == Stretch.State.OPEN);
  }

  private static double mean(List<SeenRun> runs, Stretch stretch) {
    return runs.stream()
        .flatMap(run -> run.steps().stream())
        .filter(stretch::holds)
        .mapToDouble(x -> x)
        .average()
        .orElse(stretch.from());
  }
}
