/**
 * The way in: samples are pushed, a result is asked for.
 *
 * <p>An analysis belongs to one thread and one job sheet; what it hands out is immutable.
 */
@NullMarked
package tripline;

import org.jspecify.annotations.NullMarked;
