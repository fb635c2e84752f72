/**
 * What may go wrong around the analysis, each with its own exit status.
 *
 * <p>A command throws one of these and prints nothing; {@code Main} alone turns it into lines on
 * standard error and a status. Anything else that escapes a command is a fault of the product and
 * is reported as one. Immutable; any thread.
 */
@NullMarked
package tripline.harness.failure;

import org.jspecify.annotations.NullMarked;
