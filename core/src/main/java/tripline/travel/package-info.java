/**
 * Readings turned into travel: wrap and scale, hard stops, lost motion, and the travel coordinate x
 * with its uncertainty. Pure functions over {@link tripline.reduce.Trace}; safe from any thread.
 */
@NullMarked
package tripline.travel;

import org.jspecify.annotations.NullMarked;
