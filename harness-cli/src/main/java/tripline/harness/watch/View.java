package tripline.harness.watch;

import java.util.List;
import java.util.Optional;
import tripline.job.JobSheet;
import tripline.live.ContactNow;
import tripline.live.Guide;
import tripline.live.LiveAnswer;
import tripline.live.Now;
import tripline.live.Step;
import tripline.live.TargetNow;
import tripline.live.Whereabouts;

/**
 * All that is shown at one moment.
 *
 * @param sheet what is intended
 * @param link how the line to the logger does
 * @param seen what is known of the valve; empty before the first sample
 */
record View(JobSheet sheet, Link link, Optional<Seen> seen) {
  /**
   * How the line does.
   *
   * @param port as the user named it
   * @param state in a few words where it does not simply run: waiting, unplugged; else empty
   * @param elapsedS since the watch began, s
   * @param rowsPerS rows of the last second or so
   * @param lost samples known to be missing
   * @param kept file of the capture; empty where nothing is kept
   * @param message what was said last, or a note that is being written; empty where nothing is new
   */
  record Link(
      String port,
      String state,
      double elapsedS,
      double rowsPerS,
      long lost,
      Optional<String> kept,
      String message) {}

  /** What is known of the valve. */
  record Seen(
      LiveAnswer answer,
      Now now,
      Optional<Whereabouts> where,
      Step step,
      List<ContactNow> contacts,
      List<TargetNow> targets) {

    /** Places the latest reading in the latest answer. */
    static Seen of(LiveAnswer answer, Now now) {
      Optional<Whereabouts> where = Whereabouts.of(answer, now);
      return new Seen(
          answer,
          now,
          where,
          Guide.next(answer, where, now),
          ContactNow.all(answer, where, now),
          TargetNow.all(answer, where));
    }
  }
}
