/**
 * Does a logger speak the link protocol ({@code protocol-spec/SPEC.md}; duty numbers are its own)?
 * It is greeted, asked, told wrong things, damaged bytes and the same thing twice, made to run and
 * to stop, in each encoding it has; everything it sends meanwhile is held against its duties.
 *
 * <p>Entry type: {@link tripline.harness.conform.Conformity}; {@link tripline.harness.conform.Duty}
 * lists the lines of its answer, {@link tripline.harness.conform.Report} is the answer.
 *
 * <p>Every stage asks and notes in the {@link tripline.harness.conform.Ledger} what it saw; laws
 * over all that was received are judged at the end, by {@code ...Law} classes. A duty fails by what
 * was seen, holds only if it was tried.
 *
 * <p>Threads: one. Time comes in with the line's clock, so tests need not wait. Memory: every
 * message received is kept, some thousands. Failure: a line that goes away is {@link
 * tripline.harness.serial.LineGone}; a port where nobody speaks is {@link
 * tripline.harness.failure.LinkFailure}.
 */
@NullMarked
package tripline.harness.conform;

import org.jspecify.annotations.NullMarked;
