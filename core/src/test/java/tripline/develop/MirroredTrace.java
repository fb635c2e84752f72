package tripline.develop;

import java.util.List;
import tripline.reduce.MarkPoint;
import tripline.reduce.Trace;
import tripline.sample.Channels;
import tripline.sample.Mark;
import tripline.travel.RecordingTrace;

/** The same recording seen in a mirror (open for closed), or with its channels renamed. */
final class MirroredTrace {
  private MirroredTrace() {}

  /**
   * Readings stay, marks change sides. The channel order of a mirrored sheet has torque and motor
   * channels of the two ends exchanged; names stay.
   */
  static RecordingTrace of(RecordingTrace recording) {
    List<MarkPoint> marks =
        recording.trace().marks().stream()
            .map(m -> new MarkPoint(m.timeNs(), mirrored(m.mark()), m.text(), m.place()))
            .toList();
    return with(recording, recording.trace().channels(), marks);
  }

  /** Same channels under other names. */
  static RecordingTrace renamed(RecordingTrace recording, Channels channels) {
    return with(recording, channels, recording.trace().marks());
  }

  private static Mark mirrored(Mark mark) {
    return switch (mark) {
      case CLOSED_STOP -> Mark.OPEN_STOP;
      case OPEN_STOP -> Mark.CLOSED_STOP;
      default -> mark;
    };
  }

  private static RecordingTrace with(
      RecordingTrace recording, Channels channels, List<MarkPoint> marks) {
    Trace t = recording.trace();
    Trace trace =
        new Trace(
            channels,
            t.firstNs(),
            t.lastNs(),
            t.rows(),
            t.positions(),
            t.noise(),
            t.quantum(),
            t.scanNs(),
            t.movements(),
            t.changes(),
            t.disturbances(),
            marks,
            t.losses(),
            t.faults(),
            t.start(),
            t.end(),
            t.outline());
    return new RecordingTrace(
        recording.name(), recording.sha256(), recording.drive(), recording.zero(), trace);
  }
}
