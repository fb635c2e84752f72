package tripline.capture;

/**
 * Takes the records of a capture, in order; {@code elapsedMicros} is the host's time since it
 * began.
 */
public interface CaptureSink {
  /** How it began. */
  void onBegin(CaptureBegin begin);

  /** Bytes of the logger; they belong to the decoder and hold only during the call. */
  void onReceived(long elapsedMicros, byte[] bytes, int offset, int length);

  /** The line was opened, lost or closed. */
  void onLine(long elapsedMicros, LineChange change);

  /** The operator pressed something. */
  void onMark(long elapsedMicros, HostMark mark);

  /** The end; nothing follows. */
  void onEnd(long elapsedMicros, CaptureEnd end);
}
