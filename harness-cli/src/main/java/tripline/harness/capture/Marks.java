package tripline.harness.capture;

import tripline.capture.HostMark;
import tripline.capture.HostMark.Taken;
import tripline.harness.serial.LineGone;
import tripline.link.LinkSamples;
import tripline.link.MarkKind;
import tripline.sample.Mark;

/**
 * Puts the operator's marks where they belong: into the logger's stream, which stamps them; else
 * between the bytes before and after; and a mark whose place is not known stays a note, for a hard
 * stop in the wrong place is worse than none.
 */
final class Marks {
  private final CaptureFile file;
  private final LinkSamples samples;
  private final Panel panel;

  Marks(CaptureFile file, LinkSamples samples, Panel panel) {
    this.file = file;
    this.samples = samples;
    this.panel = panel;
  }

  /** Pressed while the logger is there. */
  void pressed(Mark mark, String text, Connection connection) throws LineGone {
    if (!connection.takesMarks()) {
      file.mark(new HostMark(mark, Taken.HERE, text));
      said(mark, samples.markHere(mark, text), "there is no sample yet to set it on: press again");
      return;
    }
    file.mark(new HostMark(mark, Taken.BY_LOGGER, text));
    boolean placed;
    try {
      placed = connection.place(kind(mark).code(), text);
    } catch (LineGone e) {
      tooLate(mark, text);
      throw e;
    }
    if (placed) {
      said(mark, true, "");
    } else {
      tooLate(mark, text);
    }
  }

  /** Pressed while the line is lost. */
  void pressedAway(Mark mark, String text) {
    tooLate(mark, text);
  }

  private void tooLate(Mark mark, String text) {
    HostMark late = new HostMark(mark, Taken.TOO_LATE, text);
    file.mark(late);
    samples.markHere(Mark.NOTE, late.noteText());
    said(
        mark,
        false,
        "it did not reach the logger and is kept as a note only: press again when it is back");
  }

  private void said(Mark mark, boolean set, String why) {
    String word = kind(mark).word();
    panel.say(
        set
            ? "%s marked at %.1f s".formatted(word, file.elapsedMicros() * 1e-6)
            : "%s NOT marked: %s".formatted(word, why));
  }

  private static MarkKind kind(Mark mark) {
    return switch (mark) {
      case CLOSED_STOP -> MarkKind.CLOSED_STOP;
      case OPEN_STOP -> MarkKind.OPEN_STOP;
      case ADJUSTED -> MarkKind.ADJUSTED;
      case NOTE -> MarkKind.NOTE;
    };
  }
}
