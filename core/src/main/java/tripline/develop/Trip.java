package tripline.develop;

import java.util.Optional;
import tripline.job.Direction;
import tripline.measure.Estimate;
import tripline.reduce.Change;
import tripline.sample.ContactState;

/**
 * A settled change of a contact in travel.
 *
 * @param recording recording index
 * @param stroke stroke number within the recording; -1 outside any stroke
 * @param setting setting index
 * @param channel channel index of the sheet's {@link tripline.job.JobSheet#channels()}
 * @param to the new state
 * @param direction direction of travel; empty at rest or where no position is known
 * @param atRest nothing moved when it changed
 * @param timeS middle of its bracket, s from the recording's first stamp
 * @param reading reading there, reading units, with its parts (fit, bracket, skew); empty where no
 *     position is known
 * @param x travel coordinate there, turns, with all parts (scale and stop common); empty where no
 *     position is known
 * @param change as reduced
 */
public record Trip(
    int recording,
    int stroke,
    int setting,
    int channel,
    ContactState to,
    Optional<Direction> direction,
    boolean atRest,
    double timeS,
    Optional<Estimate> reading,
    Optional<Estimate> x,
    Change change) {}
