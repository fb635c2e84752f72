/**
 * The few words by which a rehearsal is directed: one line, one thing to do. {@link
 * tripline.harness.rehearse.script.Grammar} is what help shows, {@link
 * tripline.harness.rehearse.script.LineReader} reads it, {@link
 * tripline.harness.rehearse.script.Action} is what comes of a line.
 *
 * <p>Nothing here acts. Immutable; any thread. Failure: a line that says nothing sensible is a
 * {@link tripline.harness.rehearse.script.BadLine} with what was expected.
 */
@NullMarked
package tripline.harness.rehearse.script;

import org.jspecify.annotations.NullMarked;
