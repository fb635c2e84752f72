package tripline.harness.rehearse.valve;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;

/** What the contacts' terminals do: every electrical change, bounces included, in order of time. */
final class Toggles {
  /** Published bench test of mechanical switches: mean burst 1.557 ms, longest 6.2 ms. */
  private static final double MEAN_S = 0.001557;

  private static final double MOST_S = 0.0062;

  /** Usual distance of a burst's changes (chosen by the authors), s. */
  private static final double APART_S = 0.0004;

  private record Toggle(long timeNs, int channel) {}

  private final Chance chance;
  private final List<Toggle> due = new ArrayList<>();
  private final List<Toggle> passed = new ArrayList<>();
  private long closedBefore;
  private long closed;

  Toggles(long closed, Chance chance) {
    this.closed = closed;
    this.closedBefore = closed;
    this.chance = chance;
  }

  /** A channel settles in its other state from this time on, after bouncing. */
  void change(int channel, long timeNs) {
    add(new Toggle(timeNs, channel));
    double length = MOST_S * StrictMath.pow(chance.uniform(), MOST_S / MEAN_S - 1);
    Deque<Double> bounces = new ArrayDeque<>();
    for (double at = next(0); at < length; at = next(at)) {
      bounces.add(at);
    }
    if (bounces.size() % 2 == 1) {
      bounces.removeLast();
    }
    bounces.forEach(at -> add(new Toggle(timeNs + (long) (at * 1e9), channel)));
  }

  private double next(double after) {
    return after + APART_S * chance.uniform(0.3, 1.7);
  }

  private void add(Toggle toggle) {
    int place = due.size();
    while (place > 0 && due.get(place - 1).timeNs() > toggle.timeNs()) {
      place--;
    }
    due.add(place, toggle);
  }

  /** A step ends: what is due by then has happened. */
  void passTo(long timeNs) {
    closedBefore = closed;
    passed.clear();
    int count = 0;
    while (count < due.size() && due.get(count).timeNs() <= timeNs) {
      Toggle toggle = due.get(count++);
      passed.add(toggle);
      closed ^= 1L << toggle.channel();
    }
    due.subList(0, count).clear();
  }

  /** Changes in the last step. */
  int count() {
    return passed.size();
  }

  long timeNs(int change) {
    return passed.get(change).timeNs();
  }

  int channel(int change) {
    return passed.get(change).channel();
  }

  /** Channels closed at a time of the last step. */
  long closedAt(long timeNs) {
    long mask = closedBefore;
    for (int i = 0; i < passed.size() && passed.get(i).timeNs() <= timeNs; i++) {
      mask ^= 1L << passed.get(i).channel();
    }
    return mask;
  }
}
