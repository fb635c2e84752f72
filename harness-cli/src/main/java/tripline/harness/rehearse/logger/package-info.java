/**
 * A make-believe data logger that speaks the whole link protocol ({@code protocol-spec/SPEC.md};
 * duty numbers are its own) over bytes handed to and fro: both encodings, every command, stored
 * recordings, marks, hardware-stamped edges, losses, a clock that wraps.
 *
 * <p>Entry type: {@link tripline.harness.rehearse.logger.VirtualLogger}, wired to {@link
 * tripline.harness.rehearse.logger.Inputs}. It knows no clock, thread or port: whoever owns it
 * tells it the time, hands it what the host sent and takes what it sends.
 *
 * <p>One thread. Memory: a transmit buffer of fixed size, one block of samples, one of edges; the
 * stored recordings. Failure: damaged and malformed commands are counted and never an exception.
 */
@NullMarked
package tripline.harness.rehearse.logger;

import org.jspecify.annotations.NullMarked;
