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
record Touch(End end, HardStop.Source source, int recording, Rest rest) {}
