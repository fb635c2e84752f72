package tripline.harness.conform;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** What was seen of each duty. One sight of it broken outweighs all others. */
final class Ledger {
  /** More sights of one duty than this help nobody. */
  private static final int MOST_SEEN = 3;

  private final Map<Duty, Outcome> outcomes = new EnumMap<>(Duty.class);
  private final Map<Duty, List<String>> seen = new EnumMap<>(Duty.class);
  private final Map<Duty, Integer> more = new EnumMap<>(Duty.class);

  /** It was tried and kept, this time. */
  void holds(Duty duty) {
    if (outcomes.get(duty) != Outcome.FAILS) {
      outcomes.put(duty, Outcome.HOLDS);
      seen.remove(duty);
    }
  }

  /** It was broken. */
  void fails(Duty duty, String what) {
    if (outcomes.put(duty, Outcome.FAILS) != Outcome.FAILS) {
      seen.remove(duty);
    }
    List<String> sights = seen.computeIfAbsent(duty, d -> new ArrayList<>());
    if (sights.size() < MOST_SEEN) {
      sights.add(what);
    } else {
      more.merge(duty, 1, Integer::sum);
    }
  }

  /** Kept or broken, by a condition. */
  void judge(Duty duty, boolean kept, String whatElse) {
    if (kept) {
      holds(duty);
    } else {
      fails(duty, whatElse);
    }
  }

  /** Nothing happened by which it could be told; unless it did another time. */
  void notSeen(Duty duty, String why) {
    weak(duty, Outcome.NOT_SEEN, why);
  }

  /** Not asked for, or not fitted. */
  void notTried(Duty duty, String why) {
    weak(duty, Outcome.NOT_TRIED, why);
  }

  private void weak(Duty duty, Outcome outcome, String why) {
    if (outcomes.putIfAbsent(duty, outcome) == null) {
      seen.put(duty, List.of(why));
    }
  }

  /** One line a duty, in their order. */
  List<Report.Line> lines() {
    List<Report.Line> lines = new ArrayList<>();
    for (Duty duty : Duty.values()) {
      List<String> sights = new ArrayList<>(seen.getOrDefault(duty, List.of()));
      if (more.containsKey(duty)) {
        sights.add("and so %d times more".formatted(more.get(duty)));
      }
      lines.add(new Report.Line(duty, outcomes.getOrDefault(duty, Outcome.NOT_SEEN), sights));
    }
    return lines;
  }
}
