/**
 * What was intended: the job sheet as immutable records, with no file syntax. Every record checks
 * its own ranges in its constructor (programmer errors); sense across the sheet is checked by
 * {@link tripline.job.SheetSense}, which names each doubt with the path of the key it belongs to.
 *
 * <p>Travel is in handwheel turns, shares of travel in per cent of span, times in the unit of the
 * name's suffix.
 */
@NullMarked
package tripline.job;

import org.jspecify.annotations.NullMarked;
