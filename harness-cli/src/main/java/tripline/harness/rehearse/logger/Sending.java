package tripline.harness.rehearse.logger;

import tripline.link.Piece;

/** A stored recording on its way to the host, as fast as the line takes it. */
final class Sending {
  private static final int MOST_PIECE = 480;

  private final StoredRecording recording;
  private final int end;
  private int next;

  Sending(StoredRecording recording, int from, int end) {
    this.recording = recording;
    this.next = from;
    this.end = end;
  }

  /** Sends what there is room for; whether that was the last of it. */
  boolean go(TransmitBuffer buffer) {
    while (next < end && buffer.halfEmpty()) {
      int to = Math.min(end, next + MOST_PIECE);
      buffer.send(new Piece(recording.id(), next, recording.part(next, to)));
      next = to;
    }
    return next == end;
  }
}
