/**
 * What the measurements measure with: recordings made to size.
 *
 * <p>Entry type: {@link tripline.bench.MakeRecording}. Everything is written as it is made; memory
 * does not grow with the recording. A failure to write ends the program.
 */
@NullMarked
package tripline.bench;

import org.jspecify.annotations.NullMarked;
