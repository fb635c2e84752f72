/**
 * The host's side of the link ({@code protocol-spec/SPEC.md}; duty numbers are its own): greeting a
 * logger, commands with their answers, what the logger says of itself.
 *
 * <p>Entry types: {@link tripline.harness.host.Incoming} takes what is received, and outlives a
 * line that is lost; {@link tripline.harness.host.LoggerLine} speaks over one line.
 *
 * <p>Threads: one thread feeds, reads and commands. Memory: a decoder and a read buffer of {@value
 * tripline.harness.host.LoggerLine#READ_BYTES} bytes.
 *
 * <p>Failure: a line that is lost is {@link tripline.harness.serial.LineGone}; a logger that does
 * not answer, or cannot be understood, is {@link tripline.harness.host.NoAnswer}. Damaged bytes are
 * counted by the decoder and never an exception.
 */
@NullMarked
package tripline.harness.host;

import org.jspecify.annotations.NullMarked;
