package tripline.capture;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tripline.link.BodySink;
import tripline.link.LinkCounters;
import tripline.link.LinkDecoder;
import tripline.link.LinkSamples;
import tripline.link.SinkSource;
import tripline.sample.Channels;
import tripline.sample.Mark;

/**
 * Makes samples of a capture, exactly as they were made while it was recorded: the same decoder fed
 * with the same bytes, the same marks between them, the same line lost at the same places.
 */
public final class CaptureSamples implements CaptureSink {
  /** Gaps kept one by one; the rest are counted. */
  public static final int MOST_GAPS = 1000;

  /**
   * A stretch of time in which the line was lost.
   *
   * @param fromMicros host's time since the capture began
   * @param toMicros when the next byte came; the end of the capture where none did
   * @param cause why
   */
  public record Gap(long fromMicros, long toMicros, LineChange.Cause cause) {}

  private final LinkSamples samples;
  private final LinkDecoder decoder;
  private final List<Gap> gaps = new ArrayList<>();
  private @Nullable CaptureBegin begin;
  private @Nullable CaptureEnd end;
  private @Nullable LineChange lost;
  private long lostMicros;
  private long openedMicros;
  private long openedUtcMicros;
  private long gapCount;
  private long lateMarks;

  /**
   * @param asked contacts of the job
   * @param sinks asked for a sink when the first row comes, and after each break
   * @param also gets every message too
   */
  public CaptureSamples(Channels asked, SinkSource sinks, BodySink also) {
    this.samples = new LinkSamples(asked, sinks);
    this.decoder =
        new LinkDecoder(
            (type, body, length) -> {
              also.onBody(type, body, length);
              samples.onBody(type, body, length);
            });
  }

  /** As above, for the samples alone. */
  public CaptureSamples(Channels asked, SinkSource sinks) {
    this(asked, sinks, (type, body, length) -> {});
  }

  @Override
  public void onBegin(CaptureBegin said) {
    begin = said;
  }

  @Override
  public void onReceived(long elapsedMicros, byte[] bytes, int offset, int length) {
    endGap(elapsedMicros);
    samples.hostTime(elapsedMicros);
    decoder.accept(bytes, offset, length);
  }

  @Override
  public void onLine(long elapsedMicros, LineChange change) {
    if (change.event() == LineChange.Event.OPENED) {
      compareClocks(elapsedMicros, change.utcMicros());
    } else {
      decoder.finish();
    }
    if (change.event() == LineChange.Event.LOST && lost == null) {
      lost = change;
      lostMicros = elapsedMicros;
    }
    if (change.event() == LineChange.Event.LOST) {
      samples.lineLost();
    }
  }

  /**
   * A host that slept has a clock that stood still, and another that did not; one whose time of day
   * was set has them differ too. Which of them is right, nobody knows.
   */
  private void compareClocks(long elapsedMicros, long utcMicros) {
    if (utcMicros > 0 && openedUtcMicros > 0) {
      long awayMicros = utcMicros - openedUtcMicros - (elapsedMicros - openedMicros);
      samples.hostTimeDoubtful(Math.abs(awayMicros));
    }
    openedMicros = elapsedMicros;
    openedUtcMicros = utcMicros;
  }

  private void endGap(long elapsedMicros) {
    LineChange change = lost;
    if (change != null) {
      gapCount++;
      if (gaps.size() < MOST_GAPS) {
        gaps.add(new Gap(lostMicros, elapsedMicros, change.cause()));
      }
      lost = null;
    }
  }

  @Override
  public void onMark(long elapsedMicros, HostMark pressed) {
    switch (pressed.taken()) {
      case BY_LOGGER -> {}
      case HERE -> lateMarks += samples.markHere(pressed.mark(), pressed.text()) ? 0 : 1;
      case TOO_LATE -> {
        lateMarks++;
        samples.markHere(Mark.NOTE, pressed.noteText());
      }
    }
  }

  @Override
  public void onEnd(long elapsedMicros, CaptureEnd said) {
    endGap(elapsedMicros);
    end = said;
  }

  /**
   * All records were handed over.
   *
   * @param lastMicros host's time of the last one
   */
  public void finish(long lastMicros) {
    endGap(lastMicros);
    decoder.finish();
    samples.finish();
  }

  /** What was made of the messages. */
  public LinkSamples samples() {
    return samples;
  }

  /** What became of the logger's bytes. */
  public LinkCounters counters() {
    return decoder.counters();
  }

  /** How the capture began; empty where that record is missing. */
  public Optional<CaptureBegin> begin() {
    return Optional.ofNullable(begin);
  }

  /** How it ended; empty where it was cut off. */
  public Optional<CaptureEnd> end() {
    return Optional.ofNullable(end);
  }

  /** Stretches in which the line was lost, the first {@value #MOST_GAPS}. */
  public List<Gap> gaps() {
    return List.copyOf(gaps);
  }

  /** How often the line was lost. */
  public long gapCount() {
    return gapCount;
  }

  /** Marks that could not be placed. */
  public long lateMarks() {
    return lateMarks;
  }
}
