package tripline.harness.watch;

import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;
import tripline.harness.capture.CaptureProgress;
import tripline.harness.capture.Panel;
import tripline.harness.ending.Resized;
import tripline.harness.recording.LiveCapture;
import tripline.harness.report.Glyphs;
import tripline.job.JobSheet;
import tripline.live.LiveAnswer;
import tripline.travel.RecordingTrace;
import tripline.travel.Reference;

/**
 * A watch under way. Bytes of the capture go in, on one thread; they are explained on a second and
 * drawn on a third, so that neither a long session nor a slow terminal holds up the line.
 */
public final class Watching implements AutoCloseable {
  private final JobSheet sheet;
  private final Optional<Reference> reference;
  private final LiveCapture live;
  private final WatchPanel panel;
  private final String port;
  private final Optional<String> kept;
  private final @Nullable Drawing drawing;
  private final @Nullable EventLines lines;
  private final Explainer explainer;
  private final long startNs = System.nanoTime();
  private volatile @Nullable LiveAnswer answer;
  private volatile @Nullable View shown;
  private long happenings;

  /**
   * Begins to watch.
   *
   * @param live what is watched
   * @param kept file of the capture, if it is kept
   * @param station where it is shown and steered
   */
  public Watching(
      JobSheet sheet,
      Optional<Reference> reference,
      LiveCapture live,
      String port,
      Optional<String> kept,
      Station station) {
    this.sheet = sheet;
    this.reference = reference;
    this.live = live;
    this.port = port;
    this.kept = kept;
    panel =
        new WatchPanel(station.keyboard(), station.screen().isPresent() ? null : station.errors());
    Glyphs glyphs = station.glyphs();
    drawing =
        station
            .screen()
            .map(s -> new Drawing(s, this::view, glyphs, Resized.ofProcess()))
            .orElse(null);
    lines = drawing == null ? new EventLines(station.out(), new Speech(glyphs)) : null;
    explainer =
        new Explainer(
            sheet,
            reference,
            new Explainer.Source() {
              @Override
              public long happenings() {
                return live.happenings();
              }

              @Override
              public List<RecordingTrace> traces() {
                return live.traces();
              }
            },
            this::onAnswer);
  }

  /** The operator. */
  public Panel panel() {
    return panel;
  }

  /** Takes the next bytes of the capture. */
  public void onBytes(byte[] bytes, int length) {
    live.onBytes(bytes, length);
    long now = live.happenings();
    if (drawing != null && now != happenings) {
      happenings = now;
      drawing.wake();
    }
  }

  /** Whether to end: as asked, or because the terminal is gone. A fault of the program shows. */
  public BooleanSupplier until(BooleanSupplier asked) {
    return () -> {
      explainer.check();
      if (drawing == null) {
        return asked.getAsBoolean();
      }
      drawing.check();
      boolean ends = asked.getAsBoolean() || drawing.isGone();
      if (ends) {
        // At once: the logger may take its time to stop, and whoever asked may lose patience.
        drawing.close();
      }
      return ends;
    };
  }

  private void onAnswer(LiveAnswer next) {
    answer = next;
    EventLines told = lines;
    if (told != null) {
      seen().ifPresent(told::onSeen);
    }
  }

  /** What is known now: the latest that came, placed in the latest answer about its recording. */
  private Optional<View.Seen> seen() {
    LiveAnswer present = answer;
    return present == null
        ? Optional.empty()
        : live.latest()
            .filter(l -> l.recording() == present.result().recordings().size() - 1)
            .map(l -> View.Seen.of(present, l.now()));
  }

  private View view() {
    View before = shown;
    Optional<View.Seen> seen = seen();
    View view = new View(sheet, link(), seen.isPresent() || before == null ? seen : before.seen());
    shown = view;
    return view;
  }

  private View.Link link() {
    CaptureProgress progress = panel.progress();
    return new View.Link(
        port,
        progress != null && progress.waiting() ? "LINE LOST, waiting for it" : "",
        (System.nanoTime() - startNs) * 1e-9,
        progress == null ? 0 : progress.rowsPerS(),
        progress == null ? 0 : progress.lost(),
        kept,
        panel.message());
  }

  /**
   * Ends the watch and gives the terminal back.
   *
   * @return the answer about all that came; empty where no sample did
   */
  public Optional<LiveAnswer> end() {
    close();
    live.finish();
    List<RecordingTrace> traces = live.traces();
    if (traces.isEmpty()) {
      return Optional.empty();
    }
    answer = LiveAnswer.of(sheet, traces, reference);
    EventLines told = lines;
    if (told != null) {
      seen().ifPresent(told::onEnd);
    }
    return Optional.ofNullable(answer);
  }

  /** Gives the terminal back, whatever is under way. */
  public void giveBack() {
    panel.close();
    if (drawing != null) {
      drawing.close();
    }
  }

  @Override
  public void close() {
    explainer.close();
    giveBack();
  }
}
