package tripline.travel;

import tripline.job.End;
import tripline.reduce.Movement.Rest;

/**
 * One touch of a hard stop.
 *
 * @param end which
 * @param source how it is known
 * @param recording recording index
 * @param rest where the reading stood, unwrapped
 */
record Touch(End end, HardStop.Source source, int recording, Rest rest) {
  /** Whether both are of one rest: rests of a recording follow each other, its figures tell it. */
  boolean isOfSameRestAs(Touch other) {
    return rest.fromNs() == other.rest.fromNs()
        && rest.toNs() == other.rest.toNs()
        && rest.reading() == other.rest.reading();
  }
}
