/**
 * The logger link: bytes of the line to messages and samples, messages to bytes. The protocol is
 * {@code protocol-spec/SPEC.md}; section and duty numbers in this package are its own.
 *
 * <p>Entry types: {@link tripline.link.LinkDecoder} for bytes received, {@link
 * tripline.link.LinkSamples} for making samples of its bodies, {@link tripline.link.LinkEncoder}
 * for bytes to send.
 *
 * <p>Threads: none of these types is shared; one thread feeds one decoder.
 *
 * <p>Memory: a decoder holds a line buffer of 6144 bytes and a body of 516, {@link
 * tripline.link.LinkSamples} the rows of a block (470 × 24 bytes) and 1024 waiting edges and marks;
 * nothing grows with the recording, and nothing is allocated for {@code samples} and {@code edges}.
 *
 * <p>Failure: damaged input is never an exception. It is counted ({@link
 * tripline.link.LinkCounters}), and every byte received is accounted for. Values that a message
 * cannot carry are refused with {@link IllegalArgumentException} when the message is made.
 */
@NullMarked
package tripline.link;

import org.jspecify.annotations.NullMarked;
