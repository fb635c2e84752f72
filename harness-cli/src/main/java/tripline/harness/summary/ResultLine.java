package tripline.harness.summary;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import tripline.measure.Decision;

/**
 * What a summary keeps of one result.
 *
 * @param tag plant tag of the valve
 * @param file relative to the folder, with {@code /} between names
 * @param when its first recording began, else when the file was last written
 * @param decision of the whole
 * @param closed backoff at the closed end
 * @param open backoff at the open end
 * @param marginClosed what was left to the closed stop under power
 * @param marginOpen what was left to the open stop under power
 * @param faults number of findings that are faults
 * @param cautions number of findings that are cautions
 * @param worst code of the gravest finding
 */
record ResultLine(
    String tag,
    String file,
    Instant when,
    Decision decision,
    @Nullable Figure closed,
    @Nullable Figure open,
    @Nullable Figure marginClosed,
    @Nullable Figure marginOpen,
    int faults,
    int cautions,
    @Nullable String worst) {

  /** The lesser of both margins. */
  @Nullable Figure margin() {
    return Figure.least(marginClosed, marginOpen);
  }
}
