package tripline.harness.capture;

/**
 * What a capture came to.
 *
 * @param progress where it ended
 * @param gapMicros time in which the line was lost
 * @param receivedBytes of the logger
 */
public record CaptureSummary(CaptureProgress progress, long gapMicros, long receivedBytes) {}
