package tripline.harness.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tripline.harness.capture.CaptureProgress;
import tripline.harness.capture.CaptureSummary;
import tripline.harness.capture.Panel;
import tripline.harness.host.Incoming;
import tripline.harness.report.SafeText;
import tripline.harness.terminal.Keyboard;
import tripline.harness.terminal.Press;
import tripline.harness.terminal.ProgressLine;
import tripline.job.Contact;
import tripline.job.JobSheet;
import tripline.link.ChannelDescription;
import tripline.link.ChannelKind;
import tripline.link.Identity;

/** The operator of a recording at a terminal; all of it goes to standard error. */
final class RecordPanel implements Panel, AutoCloseable {
  private final List<String> contacts = new ArrayList<>();
  private final ProgressLine line;
  private final @Nullable Keyboard keyboard;
  private String unit = "";
  private boolean closed;

  RecordPanel(JobSheet sheet, boolean noKeys, PrintWriter errors) {
    for (String channel : sheet.channels().contacts()) {
      contacts.add(
          sheet.contacts().stream()
              .filter(c -> c.channel().equals(channel))
              .map(Contact::name)
              .findFirst()
              .orElse(channel));
    }
    this.line = ProgressLine.ofProcess(errors);
    this.keyboard = noKeys ? null : Keyboard.ofProcess();
  }

  /** Says who is recorded, and how to end it. */
  void begun(Incoming incoming, Path out) {
    Identity logger = incoming.identity();
    if (logger == null) {
      throw new IllegalStateException("begun without a logger");
    }
    incoming.channels().stream()
        .filter(c -> c.kind() == ChannelKind.POSITION)
        .map(ChannelDescription::unit)
        .findFirst()
        .ifPresent(stated -> unit = SafeText.line(stated));
    say(
        "recording %s %s (%d contacts) into %s"
            .formatted(logger.model(), logger.serial(), logger.contacts(), out));
    say("keys: c closed stop, o open stop, a adjusted, n note, q end");
  }

  @Override
  public void say(String text) {
    line.say(SafeText.line(text));
  }

  @Override
  public void show(CaptureProgress progress) {
    String note = keyboard == null ? null : keyboard.note();
    line.show(note == null ? text(progress) : "note: " + SafeText.line(note) + "_");
  }

  String text(CaptureProgress progress) {
    List<String> made = new ArrayList<>();
    for (int i = 0; i < contacts.size(); i++) {
      if ((progress.closed() >> i & 1) != 0) {
        made.add(contacts.get(i));
      }
    }
    return "%s  %s  %s  closed %s  lost %d"
        .formatted(
            time(progress.elapsedMicros()),
            progress.waiting()
                ? "WAITING for the logger"
                : "%d samples, %.0f/s".formatted(progress.rows(), progress.rowsPerS()),
            Double.isNaN(progress.reading())
                ? "no position"
                : "%.4f %s".formatted(progress.reading(), unit).strip(),
            made.isEmpty() ? "none" : String.join(" ", made),
            progress.lost());
  }

  /** The answer of the command: one line. */
  static String summary(CaptureSummary summary, Path out) {
    CaptureProgress at = summary.progress();
    String gaps =
        at.gaps() == 0
            ? "line never lost"
            : String.format(
                Locale.ROOT, "line lost %d times (%.1f s)", at.gaps(), summary.gapMicros() * 1e-6);
    return "%s: %s, %d samples, %d lost, %d marks, %s"
        .formatted(
            SafeText.line(out.toString()),
            time(at.elapsedMicros()),
            at.rows(),
            at.lost(),
            at.marks(),
            gaps);
  }

  private static String time(long micros) {
    long tenths = micros / 100_000;
    return String.format(Locale.ROOT, "%d:%02d.%d", tenths / 600, tenths / 10 % 60, tenths % 10);
  }

  @Override
  public @Nullable Press pressed(long waitMs) {
    return Keyboard.awaited(keyboard, waitMs);
  }

  /** Gives the terminal back, whatever is still to be said. */
  void giveBack() {
    if (keyboard != null) {
      keyboard.close();
    }
  }

  @Override
  public void close() {
    if (!closed) {
      closed = true;
      line.close();
      giveBack();
    }
  }
}
