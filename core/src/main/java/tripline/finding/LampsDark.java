package tripline.finding;

import java.util.List;
import java.util.Optional;
import tripline.assess.Amounts;
import tripline.assess.Assessment;
import tripline.develop.Stroke;
import tripline.develop.Trip;
import tripline.sample.ContactState;

/** {@code lamps-dark}: no lamp lit somewhere in travel. */
final class LampsDark implements Look {
  /** Shorter darkness is a change-over, not a state, s. */
  private static final double LEAST_S = 0.05;

  private record Dark(Stroke stroke, double fromS, double lengthS, Optional<Double> x) {}

  @Override
  public void look(Assessment assessment, FindingSink sink) {
    Lamps lamps = new Lamps(assessment);
    if (!lamps.both()) {
      return;
    }
    lamps.strokes().stream()
        .flatMap(s -> longest(lamps, s).stream())
        .reduce((a, b) -> b.lengthS() > a.lengthS() ? b : a)
        .ifPresent(dark -> sink.onFinding(finding(lamps, dark)));
  }

  private static Optional<Dark> longest(Lamps lamps, Stroke stroke) {
    Optional<Dark> longest = Optional.empty();
    List<Trip> changes = lamps.changes(stroke);
    double from = stroke.startS();
    Optional<Double> x = Optional.of(stroke.from());
    for (int i = 0; i <= changes.size(); i++) {
      double to =
          i < changes.size()
              ? changes.get(i).timeS() - changes.get(i).change().gapNs() * 0.5e-9
              : stroke.endS();
      double middle = (from + to) / 2;
      boolean dark =
          to - from > LEAST_S
              && !lamps.closedLit(stroke.recording(), middle)
              && !lamps.openLit(stroke.recording(), middle);
      double length = to - from;
      if (dark && (longest.isEmpty() || length > longest.orElseThrow().lengthS())) {
        longest = Optional.of(new Dark(stroke, from, length, x));
      }
      if (i < changes.size()) {
        Trip change = changes.get(i);
        boolean out = change.to() == ContactState.OPEN;
        from = change.timeS() + (out ? change.change().gapNs() * 0.5e-9 : 0);
        x = change.x().map(tripline.measure.Estimate::value);
      }
    }
    return longest;
  }

  private static Finding finding(Lamps lamps, Dark dark) {
    Draft draft = Draft.of(Code.LAMPS_DARK).stroke(dark.stroke());
    lamps.all().forEach(l -> draft.contact(l.contact()));
    dark.x().ifPresent(x -> draft.evidence("from", x));
    return draft
        .at(dark.stroke().recording(), dark.fromS())
        .evidence("dark_s", dark.lengthS())
        .says(
            String.format(
                "No lamp was lit for %s while %s%s.",
                Amounts.seconds(dark.lengthS()),
                dark.stroke().direction().word(),
                dark.x().map(x -> ", from " + Amounts.turns(x) + " of travel").orElse("")),
            "The control room sees nothing there: check which contacts feed the lamps, against the"
                + " chart.");
  }
}
