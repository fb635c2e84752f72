package tripline.compare;

import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tripline.job.End;
import tripline.result.Result.StopResult;
import tripline.travel.PartNames;

/** Which errors two accounts have in common. */
final class Kinship {
  /** How the accounts are related. */
  enum Of {
    /** One measurement: the same setting of the same recordings. */
    SAME_MEASUREMENT,
    /** Two settings within one result. */
    SAME_RESULT,
    /** Two results. */
    APART
  }

  private final Of of;
  private final boolean sameScale;
  private final boolean sameClosedStop;
  private final boolean sameOpenStop;

  private Kinship(Of of, boolean sameScale, boolean sameClosedStop, boolean sameOpenStop) {
    this.of = of;
    this.sameScale = sameScale;
    this.sameClosedStop = sameClosedStop;
    this.sameOpenStop = sameOpenStop;
  }

  static Kinship of(Account before, Account after) {
    return new Kinship(
        relation(before.origin(), after.origin()),
        before.travel().sensor().equals(after.travel().sensor()),
        isOneStop(before, after, before.travel().closedStop(), after.travel().closedStop()),
        isOneStop(before, after, before.travel().openStop(), after.travel().openStop()));
  }

  private static Of relation(Account.Origin before, Account.Origin after) {
    boolean sameFile = before.sha256().equals(after.sha256());
    boolean sameSamples =
        sameFile
            || (!before.recordings().isEmpty() && before.recordings().equals(after.recordings()));
    if (sameSamples && before.setting() == after.setting()) {
      return Of.SAME_MEASUREMENT;
    }
    return sameFile ? Of.SAME_RESULT : Of.APART;
  }

  /** One touch of a stop: one result took it from the other, or both from a third. */
  private static boolean isOneStop(
      Account before, Account after, @Nullable StopResult earlier, @Nullable StopResult later) {
    Optional<String> brought = reference(earlier, before);
    Optional<String> taken = reference(later, after);
    return taken.filter(before.origin().sha256()::equals).isPresent()
        || brought.filter(after.origin().sha256()::equals).isPresent()
        || (taken.isPresent() && taken.equals(brought));
  }

  private static Optional<String> reference(@Nullable StopResult stop, Account account) {
    return stop != null && Objects.equals(stop.source(), "reference")
        ? account.origin().reference()
        : Optional.empty();
  }

  Of of() {
    return of;
  }

  /** Whether the part of a name is one and the same error in both accounts. */
  boolean shares(String part) {
    return switch (of) {
      case SAME_MEASUREMENT -> true;
      case SAME_RESULT -> PartNames.isShared(part);
      case APART ->
          (sameScale && part.equals(PartNames.SCALE))
              || (sameClosedStop && isOf(End.CLOSED, part))
              || (sameOpenStop && isOf(End.OPEN, part));
    };
  }

  private static boolean isOf(End end, String part) {
    return part.equals(PartNames.stop(end)) || part.equals(PartNames.stopCount(end));
  }
}
