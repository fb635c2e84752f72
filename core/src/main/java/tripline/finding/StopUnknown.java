package tripline.finding;

import tripline.assess.Assessment;
import tripline.job.End;
import tripline.travel.Coordinate;

/** {@code stop-unknown}: a hard stop was never touched. */
final class StopUnknown implements Look {
  @Override
  public void look(Assessment assessment, FindingSink sink) {
    Coordinate coordinate = assessment.development().coordinate();
    for (End end : End.values()) {
      boolean known =
          end == End.CLOSED
              ? coordinate.closedStop().isPresent()
              : coordinate.openStop().isPresent();
      if (!known) {
        sink.onFinding(
            Draft.of(Code.STOP_UNKNOWN)
                .evidence("end", end.word())
                .says(
                    String.format(
                        "The %s hard stop was never touched: the backoff there is undecided.",
                        end.word()),
                    String.format(
                        "Run to the %s stop by hand with the logger running and press its mark, or"
                            + " hand in a reference.",
                        end.word())));
      }
    }
  }
}
