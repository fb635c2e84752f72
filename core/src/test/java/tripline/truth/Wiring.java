package tripline.truth;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** From true changes to electrical edges: bounce after every change, and what loose wires add. */
public final class Wiring {
  private final Map<Integer, Bounce> bounces = new HashMap<>();
  private final List<Glitch> glitches = new ArrayList<>();
  private Bounce usual = Bounce.PUBLISHED;

  /** A short change of state at a time, for a while. */
  private record Glitch(int channel, double timeS, double lengthS) {}

  public Wiring bounce(Bounce all) {
    usual = all;
    return this;
  }

  public Wiring bounce(int channel, Bounce bounce) {
    bounces.put(channel, bounce);
    return this;
  }

  /** A loose wire: for a while the channel reads the other state. */
  public Wiring glitch(int channel, double timeS, double lengthS) {
    glitches.add(new Glitch(channel, timeS, lengthS));
    return this;
  }

  /** The electrical edges of what the actuator did. */
  public Timeline timeline(Actuator actuator, Rng rng) {
    Timeline.Builder edges = new Timeline.Builder(actuator.initially());
    List<TrueChange> changes = actuator.changes();
    int contacts = actuator.plan().contacts().size();
    for (int i = 0; i < changes.size(); i++) {
      TrueChange change = changes.get(i);
      edges.toggle(ns(change.timeS()), change.channel());
      Bounce bounce =
          bounces.getOrDefault(change.channel(), change.channel() < contacts ? usual : Bounce.NONE);
      double room = untilNext(changes, i) * 0.9;
      burst(edges, change, Math.min(room, bounce.length(rng)), bounce.toggleS(), rng);
    }
    for (Glitch g : glitches) {
      edges.toggle(ns(g.timeS()), g.channel());
      edges.toggle(ns(g.timeS() + g.lengthS()), g.channel());
    }
    return edges.build();
  }

  private static void burst(
      Timeline.Builder edges, TrueChange change, double lengthS, double toggleS, Rng rng) {
    int pairs = (int) Math.round(lengthS / (2 * toggleS));
    double[] at = new double[Math.max(0, 2 * pairs - 1)];
    for (int k = 0; k < at.length; k++) {
      at[k] = rng.uniform(0, lengthS);
    }
    for (double later : at) {
      edges.toggle(ns(change.timeS() + later), change.channel());
    }
    if (pairs > 0) {
      edges.toggle(ns(change.timeS() + lengthS), change.channel());
    }
  }

  private static double untilNext(List<TrueChange> changes, int i) {
    for (int j = i + 1; j < changes.size(); j++) {
      if (changes.get(j).channel() == changes.get(i).channel()) {
        return changes.get(j).timeS() - changes.get(i).timeS();
      }
    }
    return Double.POSITIVE_INFINITY;
  }

  private static long ns(double seconds) {
    return Math.round(seconds * 1e9);
  }
}
