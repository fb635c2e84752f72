package tripline.compare;

import java.util.List;
import tripline.result.Result.ContactResult;
import tripline.travel.PartNames;

/**
 * Whether x counts from the same place in two accounts.
 *
 * @param isCommon it does, or is made to
 * @param isRegistered one was laid over the other by its contact changes: that x agrees is then an
 *     assumption, not a finding
 * @param shift how much further x of the later one is, turns
 */
record Origin(boolean isCommon, boolean isRegistered, double shift) {
  private static final String OPEN_STOP = "open-stop";
  private static final String CLOSED_STOP = "closed-stop";

  static Origin of(Account before, Account after) {
    String then = before.travel().datum();
    String now = after.travel().datum();
    if (before.origin().sha256().equals(after.origin().sha256())) {
      return new Origin(true, false, 0);
    }
    if (isLaidOver(after, before) || isLaidOver(before, after) || isLaidOverOne(before, after)) {
      return new Origin(false, true, 0);
    }
    if (then.equals(OPEN_STOP) && now.equals(OPEN_STOP)) {
      // The open stop lies at the sheet's span, whatever that is.
      double shift = after.travel().datumPosition() - before.travel().datumPosition();
      return new Origin(true, false, shift);
    }
    return new Origin(then.equals(CLOSED_STOP) && now.equals(CLOSED_STOP), false, 0);
  }

  private static boolean isLaidOver(Account account, Account other) {
    return account.origin().reference().filter(other.origin().sha256()::equals).isPresent()
        && isRegistered(account);
  }

  private static boolean isLaidOverOne(Account before, Account after) {
    return before.origin().reference().isPresent()
        && before.origin().reference().equals(after.origin().reference())
        && isRegistered(before)
        && isRegistered(after);
  }

  private static boolean isRegistered(Account account) {
    return account.contacts().stream()
        .map(ContactResult::trips)
        .flatMap(List::stream)
        .flatMap(t -> t.position().parts().stream())
        .anyMatch(p -> p.name().equals(PartNames.REGISTRATION_REFERENCE));
  }
}
