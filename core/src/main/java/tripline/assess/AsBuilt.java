package tripline.assess;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import tripline.develop.Development;
import tripline.develop.Stroke;
import tripline.job.Direction;
import tripline.result.Result.Stretch;
import tripline.sample.ContactState;

/** Where contacts were seen closed, over the travel that one setting's strokes covered. */
public final class AsBuilt {
  private final Development development;
  private final int setting;
  private final StateHistory states;

  /** The as-built development of one setting. */
  public AsBuilt(Development development, int setting) {
    this.development = development;
    this.setting = setting;
    this.states = new StateHistory(development);
  }

  /** Stretches of x over which a contact's channel was closed, rising; trip points pooled. */
  public List<Stretch> closed(ContactSeen seen, Direction direction) {
    List<Stroke> strokes =
        development.strokes().stream()
            .filter(s -> s.setting() == setting && s.direction() == direction)
            .toList();
    if (strokes.isEmpty()) {
      return List.of();
    }
    double low = strokes.stream().mapToDouble(s -> Math.min(s.from(), s.to())).min().orElse(0);
    double high = strokes.stream().mapToDouble(s -> Math.max(s.from(), s.to())).max().orElse(0);
    List<Turn> turns = turns(seen, direction);
    boolean closed = turns.isEmpty() ? stays(seen, strokes.get(0)) : !turns.get(0).closedAbove();
    List<Stretch> stretches = new ArrayList<>();
    double begin = low;
    for (Turn turn : turns) {
      if (closed && !turn.closedAbove()) {
        stretches.add(new Stretch(begin, turn.x()));
      }
      begin = turn.closedAbove() && !closed ? turn.x() : begin;
      closed = turn.closedAbove();
    }
    if (closed) {
      stretches.add(new Stretch(begin, high));
    }
    return List.copyOf(stretches);
  }

  private boolean stays(ContactSeen seen, Stroke stroke) {
    Optional<ContactState> state =
        states.at(stroke.recording(), seen.observed().channel(), stroke.startS());
    return state.filter(s -> s == ContactState.CLOSED).isPresent();
  }

  private static List<Turn> turns(ContactSeen seen, Direction direction) {
    List<Turn> turns = new ArrayList<>();
    for (Track track : seen.tracks()) {
      track
          .pooled(direction)
          .ifPresent(
              p ->
                  turns.add(
                      new Turn(p.mean().value(), track.toward(direction).get(0).closedAbove())));
    }
    turns.sort(Comparator.comparingDouble(Turn::x));
    return turns;
  }

  private record Turn(double x, boolean closedAbove) {}
}
