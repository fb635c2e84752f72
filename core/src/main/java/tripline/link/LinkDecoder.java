package tripline.link;

import java.util.zip.CRC32C;
import org.jspecify.annotations.Nullable;
import tripline.link.BodySink.Cause;

/**
 * Finds the messages in a stream of bytes, frames or lines, however it is cut (SPEC §8, §12).
 * Longer than other classes: the three modes share one buffer, and every byte must be accounted for
 * once.
 *
 * <p>Nothing is allocated after construction, nothing thrown for what is received.
 */
public final class LinkDecoder {
  /** Longest frame without its delimiter. */
  static final int MOST_FRAME = 519;

  private static final int CHECK = 4;
  private static final int LEAST_DATA = Layout.HEADER + CHECK;
  private static final int MOST_DATA = Layout.MOST_BODY + CHECK;
  private static final byte LF = '\n';
  private static final byte CR = '\r';

  private enum Mode {
    OPEN,
    FRAMES,
    LINES
  }

  private final BodySink sink;
  private final CRC32C crc = new CRC32C();
  private final LineReader lineReader = new LineReader();
  private final Sequence sequence = new Sequence();
  private final byte[] data = new byte[MOST_FRAME];
  private final byte[] held = new byte[LineWriter.MOST_LINE];

  private Mode mode = Mode.OPEN;
  private @Nullable Encoding encoding;

  /** Bytes of the unit so far, and how many of them, its last, are held. */
  private long unit;

  private int heldBytes;

  /** Where in {@code held} the present line begins, and whether it is already too long. */
  private int lineStart;

  private boolean lineDead;

  /** Whether nothing but CR and LF came before the present line in this unit. */
  private boolean blankSoFar = true;

  private long bytes;
  private long delivered;
  private long setAside;
  private long skipped;
  private long idle;
  private long messages;
  private long damaged;
  private long malformed;
  private long unknown;
  private long repeated;

  /** A decoder at the start of a stream. */
  public LinkDecoder(BodySink sink) {
    this.sink = sink;
  }

  /** Takes the next bytes; every message that ends in them is handed on before this returns. */
  public void accept(byte[] from, int offset, int length) {
    bytes += length;
    int at = offset;
    int end = offset + length;
    while (at < end) {
      at = mode == Mode.FRAMES ? acceptFrame(from, at, end) : acceptUnit(from, at, end);
    }
  }

  /** Accounts for what is pending: the line was closed (SPEC D5). */
  public void finish() {
    if (unit > 0) {
      damage(0);
      endUnit();
    }
  }

  /** What became of the bytes so far. */
  public LinkCounters counters() {
    return new LinkCounters(
        bytes,
        delivered,
        setAside,
        skipped,
        idle,
        messages,
        damaged,
        malformed,
        unknown,
        repeated,
        sequence.lost(),
        sequence.restarts());
  }

  /** The encoding of the last whole message, or null if there was none. */
  public @Nullable Encoding encoding() {
    return encoding;
  }

  private int acceptFrame(byte[] from, int at, int end) {
    int most = at + MOST_FRAME - (int) unit;
    int zero = Bytes.indexOfZero(from, at, Math.min(end, most + 1));
    if (zero >= 0) {
      if (unit == 0) {
        endByZero(from, at, zero);
      } else {
        hold(from, at, zero);
        endByZero(held, 0, heldBytes);
      }
      return zero + 1;
    }
    int stop = Math.min(end, most + 1);
    hold(from, at, stop);
    if (unit > MOST_FRAME) {
      open();
    }
    return stop;
  }

  /** Too long for a frame: it may be text that begins after the last LF. */
  private void open() {
    mode = Mode.OPEN;
    for (int i = heldBytes - 1; i >= 0 && lineStart == 0; i--) {
      if (held[i] == LF) {
        blankSoFar = isBlank(held, 0, i);
        lineStart = i + 1;
      }
    }
  }

  private int acceptUnit(byte[] from, int at, int end) {
    int stop = at;
    while (stop < end && from[stop] != 0 && from[stop] != LF) {
      stop++;
    }
    hold(from, at, stop);
    if (stop == end) {
      return end;
    }
    if (from[stop] == 0) {
      endByZero(held, 0, heldBytes);
    } else {
      endByLineFeed(from, stop);
    }
    return stop + 1;
  }

  private void hold(byte[] from, int at, int to) {
    unit += to - at;
    if (lineDead) {
      return;
    }
    if (heldBytes + to - at > held.length && lineStart > 0) {
      heldBytes -= lineStart;
      System.arraycopy(held, lineStart, held, 0, heldBytes);
      lineStart = 0;
    }
    if (heldBytes + to - at > held.length) {
      lineDead = true;
      heldBytes = lineStart;
      return;
    }
    System.arraycopy(from, at, held, heldBytes, to - at);
    heldBytes += to - at;
  }

  /** The unit is {@code [at, to)} if all of it is at hand; a zero byte ends it. */
  private void endByZero(byte[] from, int at, int to) {
    unit = from == held ? unit : to - at;
    long wire = unit + 1;
    boolean allHere = unit == to - at && unit <= MOST_FRAME;
    int length = allHere && unit > 0 ? wholeFrame(from, at, to) : -1;
    if (length >= 0) {
      mode = Mode.FRAMES;
      encoding = Encoding.FRAMES;
      take(length, wire);
    } else if (allHere && isBlank(from, at, to)) {
      idle += wire;
      mode = Mode.OPEN;
    } else {
      damage(1);
    }
    endUnit();
  }

  /** Length of the body, now in {@code data}, or -1. */
  private int wholeFrame(byte[] from, int at, int to) {
    int length = Cobs.decode(from, at, to, data);
    if (length < LEAST_DATA || length > MOST_DATA) {
      return -1;
    }
    crc.reset();
    crc.update(data, 0, length - CHECK);
    return (int) crc.getValue() == Le.i32(data, length - CHECK) ? length - CHECK : -1;
  }

  private void endByLineFeed(byte[] from, int lineFeed) {
    int content = wholeLine();
    if (content >= 0) {
      int lineBytes = heldBytes - lineStart;
      long before = unit - lineBytes;
      if (before > 0 && blankSoFar) {
        idle += before;
      } else if (before > 0) {
        skipped += before;
        damaged++;
      }
      mode = Mode.LINES;
      encoding = Encoding.LINES;
      takeLine(content, lineBytes + 1L);
      endUnit();
    } else if (mode == Mode.LINES) {
      if (unit == 0 || (unit == 1 && held[0] == CR)) {
        idle += unit + 1;
      } else {
        damage(1);
      }
      endUnit();
    } else {
      blankSoFar = blankSoFar && !lineDead && isBlank(held, lineStart, heldBytes);
      lineDead = false;
      hold(from, lineFeed, lineFeed + 1);
      lineStart = heldBytes;
      if (unit > MOST_FRAME) {
        heldBytes = 0;
        lineStart = 0;
      }
    }
  }

  private static boolean isBlank(byte[] bytes, int from, int to) {
    for (int i = from; i < to; i++) {
      if (bytes[i] != CR && bytes[i] != LF) {
        return false;
      }
    }
    return true;
  }

  /** Where the content of the present line ends if it is whole, else -1. */
  private int wholeLine() {
    int end = heldBytes;
    if (lineDead || end - lineStart >= LineWriter.MOST_LINE) {
      return -1;
    }
    if (end > lineStart && held[end - 1] == CR) {
      end--;
    }
    int content = end - LineWriter.CHECK_LENGTH;
    if (content < lineStart || held[content] != ' ' || held[content + 1] != '~') {
      return -1;
    }
    int check = 0;
    for (int i = content + 2; i < end; i++) {
      int digit = Ascii.hexDigit(held[i]);
      if (digit < 0) {
        return -1;
      }
      check = (check << 4) | digit;
    }
    crc.reset();
    crc.update(held, lineStart, content - lineStart);
    return (int) crc.getValue() == check ? content : -1;
  }

  private void takeLine(int content, long wire) {
    switch (lineReader.read(held, lineStart, content, data)) {
      case READ -> take(lineReader.length(), wire);
      case UNKNOWN -> takeUnknown(lineReader.length(), wire);
      case MALFORMED -> takeMalformed(lineReader.length(), wire);
      case WITHOUT_SEQUENCE -> {
        malformed++;
        setAside(Cause.MALFORMED, 0, wire);
      }
    }
  }

  private void take(int length, long wire) {
    MessageType type = MessageType.of(data[Layout.TYPE]);
    int form = Le.u8(data, Layout.FORM);
    if (type == null
        || (type == MessageType.SAMPLES ? !SamplesLayout.formKnown(form) : form != 0)) {
      takeUnknown(length, wire);
    } else if (!type.layout().holds(data, length)) {
      takeMalformed(length, wire);
    } else if (inSequence(type == MessageType.IDENTITY, length, wire)) {
      messages++;
      delivered += wire;
      sink.onBody(type, data, length);
    }
  }

  private void takeUnknown(int length, long wire) {
    if (inSequence(false, length, wire)) {
      unknown++;
      setAside(Cause.UNKNOWN, length, wire);
    }
  }

  private void takeMalformed(int length, long wire) {
    if (inSequence(false, length, wire)) {
      malformed++;
      setAside(Cause.MALFORMED, length, wire);
    }
  }

  private boolean inSequence(boolean identity, int length, long wire) {
    long session = identity ? Le.u32(data, IdentityLayout.SESSION) : -1;
    if (MessageType.isCommand(data[Layout.TYPE])
        || sequence.accept(Le.u16(data, Layout.SEQUENCE), session)) {
      return true;
    }
    repeated++;
    setAside(Cause.REPEATED, length, wire);
    return false;
  }

  private void setAside(Cause cause, int length, long wire) {
    setAside += wire;
    sink.onSetAside(cause, data, length);
  }

  private void damage(int delimiter) {
    damaged++;
    skipped += unit + delimiter;
  }

  private void endUnit() {
    unit = 0;
    heldBytes = 0;
    lineStart = 0;
    lineDead = false;
    blankSoFar = true;
  }
}
