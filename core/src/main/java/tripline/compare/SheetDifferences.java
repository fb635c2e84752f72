package tripline.compare;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tripline.job.End;
import tripline.result.Result.Backoff;
import tripline.result.Result.CamResult;
import tripline.result.Result.ContactResult;
import tripline.result.Result.Measured;

/** What two sheets want differently, read off the results made by them. */
final class SheetDifferences {
  /** Fewer than a result has, more than a sheet is written with. */
  private static final MathContext DIGITS = new MathContext(6);

  private final Account before;
  private final Account after;
  private final List<SheetDifference> all = new ArrayList<>();

  private SheetDifferences(Account before, Account after) {
    this.before = before;
    this.after = after;
  }

  static List<SheetDifference> of(Account before, Account after) {
    if (before.origin().jobSha256().equals(after.origin().jobSha256())) {
      return List.of();
    }
    SheetDifferences differences = new SheetDifferences(before, after);
    differences.cams();
    differences.contacts();
    differences.ends();
    return List.copyOf(differences.all);
  }

  private void cams() {
    for (CamResult now : after.cams()) {
      Optional<CamResult> then = Cams.find(before, now);
      if (then.isEmpty()) {
        add("cam", Cams.name(now), "", "new");
      } else {
        cam(then.get(), now);
      }
    }
    before.cams().stream()
        .filter(then -> Cams.find(after, then).isEmpty())
        .forEach(then -> add("cam", Cams.name(then), "there", ""));
  }

  private void cam(CamResult then, CamResult now) {
    String name = Cams.name(now);
    add("from", name, then.from(), now.from());
    Optional<String> wanted = target(before, then);
    Optional<String> wants = target(after, now);
    if (wanted.isPresent() && wants.isPresent()) {
      add("target", name, wanted.get(), wants.get());
    }
    Optional<String> allowed = tolerance(before, then);
    Optional<String> allows = tolerance(after, now);
    if (allowed.isPresent() && allows.isPresent()) {
      add("tolerance", name, allowed.get(), allows.get());
    }
  }

  /** In per cent it is of the measured span, so it has to be brought back. */
  private static Optional<String> tolerance(Account account, CamResult cam) {
    Measured span = account.travel().span();
    if (cam.tolerance() == null) {
      return Optional.empty();
    }
    if (cam.targetPercent() == null) {
      return Optional.of(text(cam.tolerance()));
    }
    return span == null || span.value() <= 0
        ? Optional.empty()
        : Optional.of(text(100 * cam.tolerance() / span.value()) + " %");
  }

  /** As the sheet states it: from the end it is measured from. */
  private static Optional<String> target(Account account, CamResult cam) {
    if (cam.targetPercent() != null) {
      return Optional.of(text(cam.targetPercent()) + " %");
    }
    Measured span = account.travel().span();
    if (cam.target() == null) {
      return Optional.empty();
    }
    if (cam.from().equals(End.CLOSED.word())) {
      return Optional.of(text(cam.target()));
    }
    return span == null ? Optional.empty() : Optional.of(text(span.value() - cam.target()));
  }

  private void contacts() {
    for (ContactResult now : after.contacts()) {
      Optional<ContactResult> then = before.contact(now.contact());
      if (then.isEmpty()) {
        add("contact", now.contact(), "", "new");
      } else {
        add("cam", "contact " + now.contact(), then.get().cam(), now.cam());
        add("role", now.contact(), then.get().role(), now.role());
      }
    }
    before.contacts().stream()
        .filter(then -> after.contact(then.contact()).isEmpty())
        .forEach(then -> add("contact", then.contact(), "there", ""));
  }

  private void ends() {
    for (End end : End.values()) {
      Backoff then = before.end(end).backoff();
      Backoff now = after.end(end).backoff();
      add("backoff", end.word(), text(then.target()), text(now.target()));
      add("backoff-tolerance", end.word(), text(then.tolerance()), text(now.tolerance()));
    }
  }

  private void add(String what, String name, String then, String now) {
    if (!Objects.equals(then, now)) {
      all.add(new SheetDifference(what, name, then, now));
    }
  }

  private static String text(@Nullable Double value) {
    return value == null
        ? ""
        : new BigDecimal(value).round(DIGITS).stripTrailingZeros().toPlainString();
  }
}
