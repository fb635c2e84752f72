/**
 * Result files read back: by whatever takes an earlier answer as its input.
 *
 * <p>Start at {@link tripline.harness.resultfile.ResultFile}; a {@link
 * tripline.harness.resultfile.Field} is a place in the file that knows its name. A result file
 * comes from anybody: what is missing, of another kind, or not a finite number throws {@link
 * tripline.harness.failure.InputFailure} with file and place; keys that nobody asks for are passed
 * over. The whole file is held, at most 64 MiB of it. Immutable; any thread.
 */
@NullMarked
package tripline.harness.resultfile;

import org.jspecify.annotations.NullMarked;
