/**
 * Captures of the logger link: the bytes of the line as they came, with the host's time, its marks
 * and the times the line was lost. The format is {@code protocol-spec/CAPTURE.md}; section and duty
 * numbers in this package are its own.
 *
 * <p>Entry types: {@link tripline.capture.CaptureEncoder} makes the bytes of a capture, {@link
 * tripline.capture.CaptureDecoder} reads them, {@link tripline.capture.CaptureSamples} makes
 * samples of what it reads.
 *
 * <p>Threads: none of these types is shared.
 *
 * <p>Memory: encoder and decoder hold one unit each, twice at most ({@value
 * tripline.capture.CaptureFormat#MOST_UNIT} bytes); nothing grows with the capture.
 *
 * <p>Failure: a capture that was cut off or damaged is never an exception. What is missing is
 * counted ({@link tripline.capture.CaptureCounters}), and every byte is accounted for.
 */
@NullMarked
package tripline.capture;

import org.jspecify.annotations.NullMarked;
