package tripline.finding;

import tripline.assess.Amounts;
import tripline.assess.Assessment;
import tripline.assess.ReadingTrust.Slip;

/** {@code position-slip}: the reading jumped further than any motion explains; one a recording. */
final class PositionSlip implements Look {
  @Override
  public void look(Assessment assessment, FindingSink sink) {
    for (int r = 0; r < assessment.development().recordings().size(); r++) {
      int recording = r;
      var mine =
          assessment.trust().slips().stream().filter(s -> s.recording() == recording).toList();
      if (!mine.isEmpty()) {
        sink.onFinding(finding(mine.get(0), mine.size()));
      }
    }
  }

  private static Finding finding(Slip slip, int times) {
    return Draft.of(Code.POSITION_SLIP)
        .at(slip.recording(), slip.atS())
        .evidence("turns", slip.turns())
        .evidence("times", times)
        .says(
            String.format(
                "The position reading jumped by %s, %s, further than any motion explains%s.",
                Amounts.turns(Math.abs(slip.turns())),
                Text.when(slip.recording(), slip.atS()),
                times == 1 ? "" : ", and " + Text.times(times) + " in all"),
            "Check the coupling of the position sensor and its counter, and record again from a hard"
                + " stop: nothing measured in travel is decided from this.");
  }
}
