package tripline.finding;

import tripline.assess.Amounts;
import tripline.assess.Assessment;
import tripline.assess.ReadingTrust.Frozen;

/** {@code position-frozen}: the reading stood still while the valve moved; one a recording. */
final class PositionFrozen implements Look {
  @Override
  public void look(Assessment assessment, FindingSink sink) {
    for (int r = 0; r < assessment.development().recordings().size(); r++) {
      int recording = r;
      assessment.trust().frozen().stream()
          .filter(f -> f.recording() == recording)
          .findFirst()
          .ifPresent(f -> sink.onFinding(finding(f)));
    }
  }

  private static Finding finding(Frozen frozen) {
    return Draft.of(Code.POSITION_FROZEN)
        .at(frozen.recording(), frozen.fromS())
        .evidence("length_s", frozen.toS() - frozen.fromS())
        .evidence("changes", frozen.changes())
        .says(
            String.format(
                "The position reading stood still for %s while the valve moved and its contacts"
                    + " changed, %s.",
                Amounts.seconds(frozen.toS() - frozen.fromS()),
                Text.when(frozen.recording(), frozen.fromS())),
            "Check the coupling and the lead of the position sensor, and record again: nothing"
                + " measured in travel is decided from this.");
  }
}
