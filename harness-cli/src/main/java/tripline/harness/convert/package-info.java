/**
 * From one recording format to another: captures of the logger link and CSV files of the contract.
 *
 * <p>Entry: {@link tripline.harness.convert.Conversion}. A recording is read twice: for what must
 * be known before the first row can be written (channels, digits, first stamp), and for its rows.
 *
 * <p>One thread. Memory does not grow with the recording. Failure: an input that cannot be read is
 * an {@code InputFailure}; a target is whole or not there at all.
 */
@NullMarked
package tripline.harness.convert;

import org.jspecify.annotations.NullMarked;
