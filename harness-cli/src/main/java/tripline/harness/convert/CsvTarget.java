package tripline.harness.convert;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.math.BigDecimal;
import tripline.csv.CsvMetadata;
import tripline.sample.ContactState;
import tripline.sample.Drive;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

/**
 * Writes rows as a recording of the contract. An edge that the logger stamped becomes two rows, the
 * last moment of the old state and the first of the new one, so that its place keeps its accuracy.
 */
final class CsvTarget implements SampleSink {
  /** What the row that is not written yet holds. */
  private enum Held {
    NOTHING,
    CELLS,
    MARK_ALONE
  }

  private static final int NS_DIGITS = 9;
  private static final int LEAST_DIGITS = 3;

  private final Writer out;
  private final int contacts;
  private final String blanks;
  private final long baseNs;
  private final StringBuilder row = new StringBuilder();
  private Held held = Held.NOTHING;
  private long heldNs;
  private String heldMark = "";
  private long rows;
  private long marks;

  CsvTarget(Writer out, Facts facts, boolean zeroLost, long baseNs) throws IOException {
    this.out = out;
    this.contacts = facts.contacts().size();
    this.blanks = ",".repeat(contacts);
    this.baseNs = baseNs;
    header(facts, zeroLost);
  }

  private void header(Facts facts, boolean zeroLost) throws IOException {
    out.write("# " + CsvMetadata.KEY + ": " + CsvMetadata.VERSION + "\n");
    if (facts.drive().isPresent()) {
      out.write("# drive: " + (facts.drive().get() == Drive.HAND ? "hand" : "motor") + "\n");
    }
    if (facts.started().isPresent()) {
      out.write("# started: " + facts.started().get() + "\n");
    }
    if (facts.logger().isPresent()) {
      out.write("# logger: " + facts.logger().get().replaceAll("\\p{Cntrl}", " ").strip() + "\n");
    }
    if (zeroLost) {
      out.write("# zero: lost\n");
    } else if (facts.zero().isPresent()) {
      out.write("# zero: kept\n");
    }
    out.write("time,position");
    for (String contact : facts.contacts()) {
      out.write(",");
      out.write(cell(contact));
    }
    out.write(",mark\n");
  }

  /** RFC 4180: quoted where it must be. */
  private static String cell(String text) {
    boolean plain =
        text.chars().noneMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r')
            && text.equals(text.strip())
            && !text.startsWith("#");
    return plain ? text : "\"" + text.replace("\"", "\"\"") + "\"";
  }

  @Override
  public void onRow(long timeNs, double reading, long known, long closed) {
    begin(timeNs, Held.CELLS);
    if (!Double.isNaN(reading)) {
      row.append(decimal(reading));
    }
    for (int i = 0; i < contacts; i++) {
      row.append(',');
      if ((known >>> i & 1) != 0) {
        row.append((closed >>> i & 1) != 0 ? '1' : '0');
      }
    }
  }

  @Override
  public void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {
    long beforeNs = timeNs - Math.max(1, resolutionNs);
    if (held == Held.NOTHING || beforeNs > heldNs) {
      edgeRow(beforeNs, channel, state.other());
    }
    edgeRow(timeNs, channel, state);
  }

  private void edgeRow(long timeNs, int channel, ContactState state) {
    begin(timeNs, Held.CELLS);
    row.append(",".repeat(channel + 1)).append(state == ContactState.CLOSED ? '1' : '0');
    row.append(",".repeat(contacts - channel - 1));
  }

  /** A mark shares the row of its moment, whichever of the two comes first. */
  @Override
  public void onMark(long timeNs, Mark mark, String text) {
    if (held == Held.NOTHING || heldNs != timeNs || !heldMark.isEmpty()) {
      begin(timeNs, Held.MARK_ALONE);
      row.append(blanks);
    }
    boolean misread = mark == Mark.NOTE && Mark.of(text) != Mark.NOTE;
    heldMark = misread ? "note: " + text : text;
    marks++;
  }

  @Override
  public void onLoss(long fromNs, long toNs, long samples) {}

  private void begin(long timeNs, Held what) {
    boolean joins = held == Held.MARK_ALONE && what == Held.CELLS && heldNs == timeNs;
    if (!joins) {
      flush();
    }
    held = what;
    heldNs = timeNs;
    row.setLength(0);
    appendTime(timeNs - baseNs);
    row.append(',');
  }

  /** Writes the row that is held. */
  void flush() {
    if (held == Held.NOTHING) {
      return;
    }
    row.append(',').append(cell(heldMark)).append('\n');
    rows++;
    held = Held.NOTHING;
    heldMark = "";
    try {
      out.append(row);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Seconds, with as many digits as it has, three at least. */
  private void appendTime(long ns) {
    if (ns < 0) {
      row.append('-');
    }
    long abs = Math.abs(ns);
    row.append(abs / 1_000_000_000).append('.');
    long fraction = abs % 1_000_000_000;
    int digits = NS_DIGITS;
    while (digits > LEAST_DIGITS && fraction % 10 == 0) {
      fraction /= 10;
      digits--;
    }
    String text = Long.toString(fraction);
    row.append("0".repeat(digits - text.length())).append(text);
  }

  /** The shortest decimal number that is this one, without an exponent. */
  private static String decimal(double value) {
    String text = Double.toString(value);
    String plain = text.indexOf('E') < 0 ? text : new BigDecimal(text).toPlainString();
    return plain.endsWith(".0") ? plain.substring(0, plain.length() - 2) : plain;
  }

  long rows() {
    return rows;
  }

  long marks() {
    return marks;
  }
}
