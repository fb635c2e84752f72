package tripline.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tripline.compare.Account.Origin;
import tripline.job.Direction;
import tripline.measure.Estimate;
import tripline.result.Result;
import tripline.result.Result.AsFound;
import tripline.result.Result.ChangeResult;
import tripline.result.Result.Measured;
import tripline.result.Result.SettingResult;
import tripline.result.Result.StopResult;
import tripline.sample.ContactState;
import tripline.travel.Reference;

/** Results of the pipeline as accounts and references, without files. */
public final class Accounts {
  private Accounts() {}

  /** The judged setting of a result that nothing has in common with another of another name. */
  public static Account judged(Result result, String name) {
    return judged(result, name, Optional.empty());
  }

  /** The same of a result that took stops from another. */
  public static Account judged(Result result, String name, Optional<String> reference) {
    int setting =
        result.settings().stream()
            .filter(SettingResult::judged)
            .mapToInt(SettingResult::number)
            .findFirst()
            .orElseThrow();
    return new Account(
        result.tag(),
        origin(name, setting, reference),
        Optional.of(result.decision()),
        result.travel(),
        result.cams(),
        result.contacts(),
        result.ends());
  }

  /** The first earlier setting of a result. */
  public static Account asFound(Result result, String name) {
    AsFound found = result.asFound().get(0);
    return new Account(
        result.tag(),
        origin(name, found.setting(), Optional.empty()),
        Optional.empty(),
        result.travel(),
        found.cams(),
        found.contacts(),
        found.ends());
  }

  private static Origin origin(String name, int setting, Optional<String> reference) {
    return new Origin(
        "result of " + name, setting, "sheet", List.of("recording of " + name), reference);
  }

  /** Its digest, as a reference to it has it. */
  public static Optional<String> digest(String name) {
    return Optional.of("result of " + name);
  }

  /** What a result brings to the next. */
  public static Reference reference(Result result) {
    List<Reference.Seen> seen = new ArrayList<>();
    for (ChangeResult c : result.changes()) {
      if (!c.atRest() && c.reading() != null && c.readingU() != null && c.direction() != null) {
        seen.add(
            new Reference.Seen(
                c.contact(),
                ContactState.valueOf(c.to().toUpperCase(Locale.ROOT)),
                Direction.valueOf(c.direction().toUpperCase(Locale.ROOT)),
                c.reading(),
                c.readingU()));
      }
    }
    return new Reference(
        "before.json",
        stop(result.travel().closedStop()),
        stop(result.travel().openStop()),
        Optional.ofNullable(result.travel().lostMotion()).map(Accounts::estimate),
        seen);
  }

  private static Estimate estimate(Measured figure) {
    return Estimate.of(figure.value(), figure.u());
  }

  private static Optional<Reference.Stop> stop(StopResult stop) {
    return Optional.ofNullable(stop).map(s -> new Reference.Stop(s.value(), s.u()));
  }
}
