package tripline.harness.summary;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import tripline.job.End;
import tripline.measure.Decision;

/**
 * What a summary keeps of one result.
 *
 * @param tag plant tag of the valve
 * @param file relative to the folder, with {@code /} between names
 * @param when its first recording began, else when the file was last written
 * @param written when the file was last written: of two analyses of one recording the later counts
 * @param decision of the whole
 * @param adjusted whether an adjustment was seen in its recordings; the figures are those after it
 * @param closed the closed end
 * @param open the open end
 * @param faults number of findings that are faults
 * @param cautions number of findings that are cautions
 * @param worst code of the gravest finding
 */
record ResultLine(
    String tag,
    String file,
    Instant when,
    Instant written,
    Decision decision,
    boolean adjusted,
    EndLine closed,
    EndLine open,
    int faults,
    int cautions,
    @Nullable String worst) {

  EndLine end(End end) {
    return end == End.CLOSED ? closed : open;
  }

  /** The end with the lesser margin; null where none is known. */
  @Nullable End leastMargin() {
    if (closed.margin() == null || open.margin() == null) {
      return closed.margin() != null ? End.CLOSED : open.margin() != null ? End.OPEN : null;
    }
    return closed.margin().value() <= open.margin().value() ? End.CLOSED : End.OPEN;
  }
}
