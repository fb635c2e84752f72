/**
 * Captures on disk and while they are made: raw bytes first, decoded after.
 *
 * <p>Entry types: {@link tripline.harness.capture.CaptureFile} is the file that grows, {@link
 * tripline.harness.capture.Capturing} fills it from a logger, over as many lines as it takes.
 *
 * <p>Threads: one thread captures. A daemon thread of the file asks the system to put it on disk,
 * so that a slow disk never holds up the line.
 *
 * <p>Memory: two units of the format; nothing grows with the capture.
 *
 * <p>Failure: a file that can no longer be written is an {@link
 * tripline.harness.failure.OutputFailure} that says up to when it is good. A lost line is none: it
 * is waited for.
 */
@NullMarked
package tripline.harness.capture;

import org.jspecify.annotations.NullMarked;
