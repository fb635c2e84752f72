package tripline.capture;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;

/** What a decoder handed on, as lines. */
final class Captured implements CaptureSink {
  final List<String> log = new ArrayList<>();
  final ByteArrayOutputStream received = new ByteArrayOutputStream();
  final CaptureDecoder decoder = new CaptureDecoder(this);

  static Captured of(byte[] file) {
    Captured captured = new Captured();
    captured.decoder.accept(file, 0, file.length);
    captured.decoder.finish();
    return captured;
  }

  @Override
  public void onBegin(CaptureBegin begin) {
    log.add("begin " + begin);
  }

  @Override
  public void onReceived(long elapsedMicros, byte[] bytes, int offset, int length) {
    received.write(bytes, offset, length);
    log.add(
        elapsedMicros
            + " received "
            + HexFormat.of().formatHex(bytes, offset, offset + Math.min(length, 8))
            + " "
            + length);
  }

  @Override
  public void onLine(long elapsedMicros, LineChange change) {
    log.add(elapsedMicros + " " + change);
  }

  @Override
  public void onMark(long elapsedMicros, HostMark mark) {
    log.add(elapsedMicros + " " + mark);
  }

  @Override
  public void onEnd(long elapsedMicros, CaptureEnd end) {
    log.add(elapsedMicros + " " + end);
  }
}
