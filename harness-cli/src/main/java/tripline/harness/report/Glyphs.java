package tripline.harness.report;

import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.UnsupportedCharsetException;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The signs text drawings are made of.
 *
 * <p>Each is one character wide; {@link #plusMinus} alone may be two.
 */
public enum Glyphs {
  /** Block elements and box drawing. */
  UNICODE("█", "▌", "▐", "─", "├", "─", "┤", "┼", "┃", "╎", "┴", "±", "…"),
  /** Printable ASCII only. */
  ASCII("#", "#", "#", "-", "[", "-", "]", "+", "|", ":", "'", "+-", "~");

  /** Environment variable that asks for ASCII (anything but 0) or forbids it (0). */
  public static final String VARIABLE = "TRIPLINE_ASCII";

  private final String closed;
  private final String leftClosed;
  private final String rightClosed;
  private final String open;
  private final String bandFrom;
  private final String band;
  private final String bandTo;
  private final String trip;
  private final String stop;
  private final String scaleBreak;
  private final String tick;
  private final String plusMinus;
  private final String cut;

  Glyphs(
      String closed,
      String leftClosed,
      String rightClosed,
      String open,
      String bandFrom,
      String band,
      String bandTo,
      String trip,
      String stop,
      String scaleBreak,
      String tick,
      String plusMinus,
      String cut) {
    this.closed = closed;
    this.leftClosed = leftClosed;
    this.rightClosed = rightClosed;
    this.open = open;
    this.bandFrom = bandFrom;
    this.band = band;
    this.bandTo = bandTo;
    this.trip = trip;
    this.stop = stop;
    this.scaleBreak = scaleBreak;
    this.tick = tick;
    this.plusMinus = plusMinus;
    this.cut = cut;
  }

  /** What a process should draw with: as its environment asks, else as its locale can show. */
  public static Glyphs ofProcess() {
    return of(System.getenv(), System.getProperty("native.encoding"));
  }

  /**
   * What to draw with.
   *
   * @param environment the process's environment
   * @param encoding name of the encoding of its locale, null where it is not known
   */
  static Glyphs of(Map<String, String> environment, @Nullable String encoding) {
    String asked = environment.getOrDefault(VARIABLE, "");
    if (!asked.isEmpty()) {
      return asked.equals("0") ? UNICODE : ASCII;
    }
    return encoding != null && shows(encoding) ? UNICODE : ASCII;
  }

  private static boolean shows(String encoding) {
    try {
      Charset charset = Charset.forName(encoding);
      return charset.canEncode() && charset.newEncoder().canEncode("█▌▐├┼┤┃╎┴±…");
    } catch (IllegalCharsetNameException | UnsupportedCharsetException e) {
      return false;
    }
  }

  /** A column of travel over which a contact is closed, by halves. */
  String cell(boolean left, boolean right) {
    if (left && right) {
      return closed;
    }
    return left ? leftClosed : right ? rightClosed : open;
  }

  /** A contact closed over the whole column. */
  public String closed() {
    return closed;
  }

  /** A contact open over the whole column. */
  public String open() {
    return open;
  }

  String bandFrom() {
    return bandFrom;
  }

  String band() {
    return band;
  }

  String bandTo() {
    return bandTo;
  }

  /** A trip point. */
  public String trip() {
    return trip;
  }

  /** A hard stop. */
  public String stop() {
    return stop;
  }

  /** Where the scale of a drawing changes. */
  public String scaleBreak() {
    return scaleBreak;
  }

  String tick() {
    return tick;
  }

  /** Where something stands on a line of travel. */
  public String here() {
    return this == ASCII ? "@" : "●";
  }

  /** Where something is to come on a line of travel. */
  public String target() {
    return this == ASCII ? "v" : "▼";
  }

  /** What follows a number of degrees. */
  public String degree() {
    return this == ASCII ? " deg" : "°";
  }

  /** What stands where a text was cut. */
  public String cutMark() {
    return cut;
  }

  /** Between a figure and its tolerance. */
  public String plusMinus() {
    return plusMinus;
  }

  /** A text, cut to a width and marked where it was cut. */
  public String fit(String text, int width) {
    int length = text.codePointCount(0, text.length());
    if (length <= width) {
      return text + " ".repeat(width - length);
    }
    return text.substring(0, text.offsetByCodePoints(0, width - 1)) + cut;
  }
}
