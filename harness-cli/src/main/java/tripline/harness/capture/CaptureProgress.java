package tripline.harness.capture;

/**
 * How far a capture is.
 *
 * @param elapsedMicros host's time since it began
 * @param waiting the line is lost and waited for
 * @param rows samples
 * @param rowsPerS samples a second of late
 * @param reading position in units of the reading, NaN if none is known
 * @param known contact channels of the job of which a state is known, by bit
 * @param closed those of them that are closed
 * @param lost samples known to be lost, by logger or link
 * @param marks marks so far
 * @param gaps times the line was lost
 */
public record CaptureProgress(
    long elapsedMicros,
    boolean waiting,
    long rows,
    double rowsPerS,
    double reading,
    long known,
    long closed,
    long lost,
    long marks,
    long gaps) {}
