package tripline.capture;

import java.util.zip.CRC32C;
import tripline.link.Cobs;

/**
 * Reads a capture that is pushed in as bytes, in pieces of any size. Whatever it was cut off in or
 * damaged by, all whole records are handed on (CAPTURE.md §4). Nothing is allocated for bytes
 * received.
 */
public final class CaptureDecoder {
  private static final long OFFSETS = 0xffff_ffffL;

  private final CaptureSink sink;
  private final CRC32C crc = new CRC32C();
  private final byte[] held = new byte[CaptureFormat.MOST_UNIT];
  private final byte[] data = new byte[CaptureFormat.MOST_UNIT];
  private final Body body = new Body(data);
  private int heldBytes;
  private long unit;
  private int leadSeen;
  private long bytes;
  private long records;
  private long unknown;
  private long damaged;
  private long skipped;
  private long cut;
  private int nextNumber = -1;
  private long missingRecords;
  private long nextOffset;
  private long missingBytes;
  private long lastMicros;
  private boolean ended;

  /** A decoder at the start of a capture. */
  public CaptureDecoder(CaptureSink sink) {
    this.sink = sink;
  }

  /** Takes the next bytes of the file. */
  public void accept(byte[] from, int offset, int length) {
    int at = offset;
    int end = offset + length;
    bytes += length;
    while (at < end && leadSeen < CaptureFormat.LEAD_BYTES) {
      // A lead that is damaged ends at its zero byte all the same.
      leadSeen = from[at] == 0 ? CaptureFormat.LEAD_BYTES : leadSeen + 1;
      at++;
    }
    while (at < end) {
      int zero = at;
      while (zero < end && from[zero] != 0) {
        zero++;
      }
      if (zero == end) {
        hold(from, at, end);
        return;
      }
      if (unit == 0) {
        unit = (long) zero - at;
        take(from, at, zero);
      } else {
        hold(from, at, zero);
        take(held, 0, heldBytes);
      }
      unit = 0;
      heldBytes = 0;
      at = zero + 1;
    }
  }

  /** The file is at its end: a unit without its delimiter was cut off. */
  public void finish() {
    cut = unit;
    unit = 0;
    heldBytes = 0;
  }

  /** What became of the bytes so far. */
  public CaptureCounters counters() {
    return new CaptureCounters(
        bytes, records, unknown, damaged, skipped, cut, missingRecords, missingBytes, lastMicros);
  }

  /** Whether the capture came to an orderly end. */
  public boolean ended() {
    return ended;
  }

  private void hold(byte[] from, int at, int to) {
    int room = Math.min(to - at, held.length - heldBytes);
    System.arraycopy(from, at, held, heldBytes, room);
    heldBytes += room;
    unit += to - at;
  }

  private void take(byte[] from, int at, int to) {
    if (unit == 0) {
      return;
    }
    int length = unit <= CaptureFormat.MOST_UNIT ? whole(from, at, to) : -1;
    if (length < 0) {
      damaged++;
      skipped += unit + 1;
    } else {
      record(length);
    }
  }

  private int whole(byte[] from, int at, int to) {
    int length = Cobs.decode(from, at, to, data) - CaptureFormat.CHECK;
    if (length < CaptureFormat.HEADER) {
      return -1;
    }
    crc.reset();
    crc.update(data, 0, length);
    return (int) crc.getValue() == body.i32(length) ? length : -1;
  }

  private void record(int length) {
    int number = body.u16(CaptureFormat.NUMBER);
    if (nextNumber >= 0) {
      missingRecords += (number - nextNumber) & 0xffff;
    }
    nextNumber = (number + 1) & 0xffff;
    lastMicros = Math.max(lastMicros, body.i64(CaptureFormat.ELAPSED));
    if (!body.holds(length)) {
      unknown++;
      return;
    }
    records++;
    switch (body.type()) {
      case CaptureFormat.BEGIN -> sink.onBegin(body.begin());
      case CaptureFormat.RECEIVED -> received(length);
      case CaptureFormat.LINE -> sink.onLine(lastMicros, body.line());
      case CaptureFormat.MARK -> sink.onMark(lastMicros, body.mark());
      default -> end(body.end());
    }
  }

  private void received(int length) {
    int count = length - CaptureFormat.RECEIVED_DATA;
    expect(body.i32(CaptureFormat.RECEIVED_OFFSET) & OFFSETS);
    nextOffset = (nextOffset + count) & OFFSETS;
    sink.onReceived(lastMicros, data, CaptureFormat.RECEIVED_DATA, count);
  }

  private void end(CaptureEnd said) {
    ended = true;
    expect(said.receivedBytes() & OFFSETS);
    sink.onEnd(lastMicros, said);
  }

  /** Counts the bytes of the logger that are missing up to here. */
  private void expect(long offset) {
    missingBytes += (offset - nextOffset) & OFFSETS;
    nextOffset = offset;
  }
}
