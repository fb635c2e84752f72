/**
 * A rehearsal: a make-believe valve and logger on a real serial device of this machine, so that
 * recording, watching and checking can be learnt and tested with no hardware.
 *
 * <p>Entry type: {@link tripline.harness.rehearse.Rehearsal}. {@link tripline.harness.rehearse.Rig}
 * is valve, logger and cable in one piece, with a time of its own; {@link
 * tripline.harness.rehearse.Director} does what a script or somebody at the keyboard says.
 *
 * <p>Threads: one runs the rig; the port and the keyboard have a daemon thread each that only fill
 * or empty a queue. Real time comes in by {@link tripline.harness.rehearse.Pace}, so tests need not
 * wait.
 *
 * <p>Memory: fixed, but for the logger's stored recordings (a few hundred KB). Failure: a job sheet
 * or script that cannot be used is an input failure; a port that cannot be made, a {@link
 * tripline.harness.failure.LinkFailure}.
 */
@NullMarked
package tripline.harness.rehearse;

import org.jspecify.annotations.NullMarked;
