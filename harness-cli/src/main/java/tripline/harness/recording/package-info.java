/**
 * Recording files: bytes from disk through the readers of core to reduced recordings.
 *
 * <p>Entry: {@link tripline.harness.recording.Recordings}. The first byte of a file tells a capture
 * of the logger link from CSV text; what comes out is the same. Memory does not grow with a file:
 * four buffers of 256 KiB and one reduction a thread. A file that cannot be used throws one {@code
 * InputFailure} with the place of the first thing wrong; nothing of it is used. What a user should
 * know without its being wrong is a notice. Safe from any thread; each file is read by one, and its
 * digest taken by another.
 */
@NullMarked
package tripline.harness.recording;

import org.jspecify.annotations.NullMarked;
