/**
 * Samples in, a {@link tripline.reduce.Trace} out: the only part of the analysis that sees samples.
 *
 * <p>Entry type: {@link tripline.reduce.Reduction}. One pass, primitives only, nothing allocated
 * per sample; memory is a fixed ring of recent readings plus what the events need. One thread feeds
 * one reduction. Everything here is in units of the position reading and nanoseconds of the
 * recording: hard stops and lost motion are only known at the end of a recording, so turning
 * readings into travel is the next room's work.
 */
@NullMarked
package tripline.reduce;

import org.jspecify.annotations.NullMarked;
