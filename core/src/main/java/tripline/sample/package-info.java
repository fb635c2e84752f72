/**
 * The vocabulary of a recording as it streams by: channels, rows, edges, marks and losses. Depends
 * on nothing.
 *
 * <p>Entry type: {@link tripline.sample.SampleSink}. One thread feeds one sink. Nothing here holds
 * memory beyond the channel names.
 */
@NullMarked
package tripline.sample;

import org.jspecify.annotations.NullMarked;
