package tripline.compare;

import java.util.Optional;
import tripline.result.Result.SensorResult;

/** Why two accounts cannot be compared, as what is wrong with the later and was expected of it. */
final class Refusal {
  private Refusal() {}

  static Optional<String> of(Account before, Account after) {
    SensorResult then = before.travel().sensor();
    SensorResult now = after.travel().sensor();
    if (!before.tag().equals(after.tag())) {
      return said("is a result of \"%s\", expected one of \"%s\"", after.tag(), before.tag());
    }
    if (!then.side().equals(now.side())) {
      return said(
          "has its position sensor on the %s side, expected the %s side: lost motion shows on one"
              + " only",
          now.side(), then.side());
    }
    if (then.turnsPerUnit() != now.turnsPerUnit()) {
      return said(
          "has %s turns per unit of reading, expected %s: another unit or sensor",
          Double.toString(now.turnsPerUnit()), Double.toString(then.turnsPerUnit()));
    }
    boolean common =
        after.contacts().stream().anyMatch(c -> before.contact(c.contact()).isPresent());
    return common
        ? Optional.empty()
        : Optional.of("names none of the other's contacts, expected a result by the same chart");
  }

  private static Optional<String> said(String pattern, String now, String then) {
    return Optional.of(pattern.formatted(now, then));
  }
}
