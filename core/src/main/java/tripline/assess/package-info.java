/**
 * What was seen against what was intended: trip points pooled over strokes and decided with a guard
 * band, contacts against the development chart, backoff and margin of both ends, and what to turn.
 *
 * <p>Entry type: {@link tripline.assess.Assessment}. Pure functions over a {@link
 * tripline.develop.Development}; safe from any thread; memory in proportion to strokes times
 * contacts. Nothing here fails on what a recording holds: what cannot be told is undecided, with
 * the reason beside it.
 */
@NullMarked
package tripline.assess;

import org.jspecify.annotations.NullMarked;
