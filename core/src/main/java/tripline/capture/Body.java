package tripline.capture;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Optional;
import tripline.sample.Drive;
import tripline.sample.Mark;

/** Fields of one body (CAPTURE.md §3). */
final class Body {
  private static final int BEGIN_TEXTS = 4;

  private final byte[] bytes;
  private final ByteBuffer fields;

  Body(byte[] bytes) {
    this.bytes = bytes;
    this.fields = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
  }

  int type() {
    return u8(CaptureFormat.TYPE);
  }

  int u8(int at) {
    return bytes[at] & 0xff;
  }

  int u16(int at) {
    return fields.getShort(at) & 0xffff;
  }

  int i32(int at) {
    return fields.getInt(at);
  }

  long i64(int at) {
    return fields.getLong(at);
  }

  /** Whether it is a record this version knows, with room for its fields. */
  boolean holds(int length) {
    if (u8(CaptureFormat.FORM) != 0 || i64(CaptureFormat.ELAPSED) < 0) {
      return false;
    }
    return switch (type()) {
      case CaptureFormat.BEGIN ->
          length > CaptureFormat.BEGIN_STRINGS
              && Strings.hold(bytes, CaptureFormat.BEGIN_STRINGS, length, BEGIN_TEXTS);
      case CaptureFormat.RECEIVED -> length > CaptureFormat.RECEIVED_DATA;
      case CaptureFormat.LINE ->
          length > CaptureFormat.LINE_STRINGS
              && Strings.hold(bytes, CaptureFormat.LINE_STRINGS, length, 1)
              && u8(CaptureFormat.LINE_EVENT) >= 1
              && u8(CaptureFormat.LINE_EVENT) <= LineChange.Event.values().length;
      case CaptureFormat.MARK ->
          length > CaptureFormat.MARK_STRINGS
              && Strings.hold(bytes, CaptureFormat.MARK_STRINGS, length, 1);
      case CaptureFormat.END -> length >= CaptureFormat.END_BYTES;
      default -> false;
    };
  }

  CaptureBegin begin() {
    int drive = u8(CaptureFormat.BEGIN_DRIVE);
    int zero = u8(CaptureFormat.BEGIN_ZERO);
    byte[] digest =
        Arrays.copyOfRange(
            bytes,
            CaptureFormat.BEGIN_JOB,
            CaptureFormat.BEGIN_JOB + CaptureFormat.BEGIN_JOB_BYTES);
    return new CaptureBegin(
        u8(CaptureFormat.BEGIN_MAJOR),
        u8(CaptureFormat.BEGIN_MINOR),
        drive == 1
            ? Optional.of(Drive.HAND)
            : drive == 2 ? Optional.of(Drive.MOTOR) : Optional.empty(),
        zero == 1
            ? Optional.of(CaptureBegin.Zero.KEPT)
            : zero == 2 ? Optional.of(CaptureBegin.Zero.LOST) : Optional.empty(),
        i64(CaptureFormat.BEGIN_UTC),
        HexFormat.of().formatHex(digest),
        Strings.get(bytes, CaptureFormat.BEGIN_STRINGS, 0),
        Strings.get(bytes, CaptureFormat.BEGIN_STRINGS, 1),
        Strings.get(bytes, CaptureFormat.BEGIN_STRINGS, 2),
        Strings.get(bytes, CaptureFormat.BEGIN_STRINGS, 3));
  }

  LineChange line() {
    LineChange.Event event = LineChange.Event.OPENED;
    for (LineChange.Event each : LineChange.Event.values()) {
      event = each.code() == u8(CaptureFormat.LINE_EVENT) ? each : event;
    }
    LineChange.Cause cause = LineChange.Cause.NONE;
    for (LineChange.Cause each : LineChange.Cause.values()) {
      cause = each.code() == u8(CaptureFormat.LINE_CAUSE) ? each : cause;
    }
    return new LineChange(
        event,
        cause,
        i64(CaptureFormat.LINE_UTC),
        Strings.get(bytes, CaptureFormat.LINE_STRINGS, 0));
  }

  /** A kind this version does not know is a note; one that is taken in an unknown way, too late. */
  HostMark mark() {
    Mark kind = Mark.NOTE;
    for (Mark each : Mark.values()) {
      kind = CaptureEncoder.code(each) == u8(CaptureFormat.MARK_KIND) ? each : kind;
    }
    HostMark.Taken taken = HostMark.Taken.TOO_LATE;
    for (HostMark.Taken each : HostMark.Taken.values()) {
      taken = each.code() == u8(CaptureFormat.MARK_TAKEN) ? each : taken;
    }
    return new HostMark(kind, taken, Strings.get(bytes, CaptureFormat.MARK_STRINGS, 0));
  }

  CaptureEnd end() {
    CaptureEnd.Reason reason = CaptureEnd.Reason.ASKED;
    for (CaptureEnd.Reason each : CaptureEnd.Reason.values()) {
      reason = each.code() == u8(CaptureFormat.END_REASON) ? each : reason;
    }
    return new CaptureEnd(reason, i64(CaptureFormat.END_RECEIVED));
  }
}
