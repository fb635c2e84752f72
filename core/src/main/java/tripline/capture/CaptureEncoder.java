package tripline.capture;

import static tripline.capture.CaptureFormat.BEGIN_DRIVE;
import static tripline.capture.CaptureFormat.BEGIN_JOB;
import static tripline.capture.CaptureFormat.BEGIN_JOB_BYTES;
import static tripline.capture.CaptureFormat.BEGIN_MAJOR;
import static tripline.capture.CaptureFormat.BEGIN_MINOR;
import static tripline.capture.CaptureFormat.BEGIN_STRINGS;
import static tripline.capture.CaptureFormat.BEGIN_UTC;
import static tripline.capture.CaptureFormat.BEGIN_ZERO;
import static tripline.capture.CaptureFormat.CHECK;
import static tripline.capture.CaptureFormat.ELAPSED;
import static tripline.capture.CaptureFormat.END_BYTES;
import static tripline.capture.CaptureFormat.END_REASON;
import static tripline.capture.CaptureFormat.END_RECEIVED;
import static tripline.capture.CaptureFormat.FORM;
import static tripline.capture.CaptureFormat.LEAD_BYTES;
import static tripline.capture.CaptureFormat.LINE_CAUSE;
import static tripline.capture.CaptureFormat.LINE_EVENT;
import static tripline.capture.CaptureFormat.LINE_STRINGS;
import static tripline.capture.CaptureFormat.LINE_UTC;
import static tripline.capture.CaptureFormat.MARK_KIND;
import static tripline.capture.CaptureFormat.MARK_STRINGS;
import static tripline.capture.CaptureFormat.MARK_TAKEN;
import static tripline.capture.CaptureFormat.MOST_BODY;
import static tripline.capture.CaptureFormat.MOST_DATA;
import static tripline.capture.CaptureFormat.MOST_UNIT;
import static tripline.capture.CaptureFormat.NUMBER;
import static tripline.capture.CaptureFormat.RECEIVED_DATA;
import static tripline.capture.CaptureFormat.RECEIVED_OFFSET;
import static tripline.capture.CaptureFormat.TYPE;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.HexFormat;
import java.util.Objects;
import java.util.zip.CRC32C;
import tripline.link.Cobs;
import tripline.sample.Drive;
import tripline.sample.Mark;

/**
 * Makes the bytes of a capture, record by record. After each call {@link #bytes} holds {@link
 * #length} bytes to be put at the end of the file, in one write. Nothing is allocated for bytes
 * received.
 */
public final class CaptureEncoder {
  private final byte[] body = new byte[MOST_BODY + CHECK];
  private final ByteBuffer fields = ByteBuffer.wrap(body).order(ByteOrder.LITTLE_ENDIAN);
  private final byte[] out = new byte[LEAD_BYTES + MOST_UNIT + 1];
  private final CRC32C crc = new CRC32C();
  private int length;
  private int number;
  private long received;

  /** An encoder at the start of a capture. */
  public CaptureEncoder() {}

  /** Bytes to write; they hold until the next call. */
  public byte[] bytes() {
    return out;
  }

  /** How many of them. */
  public int length() {
    return length;
  }

  /** Bytes of the logger so far. */
  public long receivedBytes() {
    return received;
  }

  /** The lead of the file and the first record. */
  public void begin(CaptureBegin begin) {
    System.arraycopy(CaptureFormat.lead(), 0, out, 0, LEAD_BYTES);
    header(CaptureFormat.BEGIN, 0);
    body[BEGIN_MAJOR] = (byte) begin.major();
    body[BEGIN_MINOR] = (byte) begin.minor();
    body[BEGIN_DRIVE] = (byte) begin.drive().map(d -> d == Drive.HAND ? 1 : 2).orElse(0).intValue();
    body[BEGIN_ZERO] =
        (byte) begin.zero().map(z -> z == CaptureBegin.Zero.KEPT ? 1 : 2).orElse(0).intValue();
    fields.putLong(BEGIN_UTC, begin.utcMicros());
    byte[] digest = HexFormat.of().parseHex(begin.jobSha256());
    System.arraycopy(digest, 0, body, BEGIN_JOB, BEGIN_JOB_BYTES);
    int at = Strings.put(body, BEGIN_STRINGS, begin.program());
    at = Strings.put(body, at, begin.port());
    at = Strings.put(body, at, begin.tag());
    length = LEAD_BYTES + unit(Strings.put(body, at, begin.job()), LEAD_BYTES);
  }

  /**
   * Bytes of the logger.
   *
   * @param count 1 to {@value CaptureFormat#MOST_DATA}
   */
  public void received(long elapsedMicros, byte[] from, int offset, int count) {
    Objects.checkFromIndexSize(offset, count, from.length);
    if (count < 1 || count > MOST_DATA) {
      throw new IllegalArgumentException(count + " bytes, expected 1 to " + MOST_DATA);
    }
    header(CaptureFormat.RECEIVED, elapsedMicros);
    fields.putInt(RECEIVED_OFFSET, (int) received);
    System.arraycopy(from, offset, body, RECEIVED_DATA, count);
    received += count;
    length = unit(RECEIVED_DATA + count, 0);
  }

  /** The line was opened, lost or closed. */
  public void line(long elapsedMicros, LineChange change) {
    header(CaptureFormat.LINE, elapsedMicros);
    body[LINE_EVENT] = (byte) change.event().code();
    body[LINE_CAUSE] = (byte) change.cause().code();
    fields.putShort(LINE_CAUSE + 1, (short) 0);
    fields.putLong(LINE_UTC, change.utcMicros());
    length = unit(Strings.put(body, LINE_STRINGS, change.text()), 0);
  }

  /** The operator pressed something. */
  public void mark(long elapsedMicros, HostMark mark) {
    header(CaptureFormat.MARK, elapsedMicros);
    body[MARK_KIND] = (byte) code(mark.mark());
    body[MARK_TAKEN] = (byte) mark.taken().code();
    length = unit(Strings.put(body, MARK_STRINGS, mark.text()), 0);
  }

  static int code(Mark mark) {
    return switch (mark) {
      case CLOSED_STOP -> 1;
      case OPEN_STOP -> 2;
      case ADJUSTED -> 3;
      case NOTE -> 4;
    };
  }

  /** The end. */
  public void end(long elapsedMicros, CaptureEnd.Reason reason) {
    header(CaptureFormat.END, elapsedMicros);
    fields.putInt(END_REASON, reason.code());
    fields.putLong(END_RECEIVED, received);
    length = unit(END_BYTES, 0);
  }

  private void header(int type, long elapsedMicros) {
    body[TYPE] = (byte) type;
    body[FORM] = 0;
    fields.putShort(NUMBER, (short) number++);
    fields.putLong(ELAPSED, elapsedMicros);
  }

  private int unit(int bodyLength, int at) {
    crc.reset();
    crc.update(body, 0, bodyLength);
    fields.putInt(bodyLength, (int) crc.getValue());
    int written = Cobs.encode(body, bodyLength + CHECK, out, at);
    out[at + written] = 0;
    return written + 1;
  }
}
