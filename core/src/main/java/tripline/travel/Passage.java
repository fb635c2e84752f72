package tripline.travel;

import java.util.Optional;
import tripline.job.Direction;
import tripline.measure.Estimate;
import tripline.reduce.Change;

/**
 * A settled change as travel sees it, before any zero is known.
 *
 * @param recording recording index
 * @param setting setting index
 * @param channel channel index of the sheet's {@link tripline.job.JobSheet#channels()}
 * @param direction direction of travel; empty at rest or where no position is known
 * @param reading reading there, reading units, unwrapped against the recording before; empty where
 *     no position is known
 * @param change as reduced
 */
public record Passage(
    int recording,
    int setting,
    int channel,
    Optional<Direction> direction,
    Optional<Estimate> reading,
    Change change) {

  /** Nothing moved when the contact changed. */
  public boolean atRest() {
    return change.motion() == Change.Motion.AT_REST;
  }
}
