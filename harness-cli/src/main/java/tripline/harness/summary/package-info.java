/**
 * A folder of results at a glance: one line an actuator.
 *
 * <p>Entry: {@link tripline.harness.summary.Summary}. Result files are read one after the other as
 * a stream; of each a line of some hundred bytes is kept, so that memory grows with the number of
 * results and not with their size. A file that is no result is counted, a damaged one is named;
 * neither stops the others. Not for use from several threads at once.
 */
@NullMarked
package tripline.harness.summary;

import org.jspecify.annotations.NullMarked;
