package tripline.truth;

import java.nio.charset.StandardCharsets;
import java.util.List;
import tripline.sample.ContactState;
import tripline.sample.Drive;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

/** Writes rows as a recording file of contract clause 3; cells that were not read stay empty. */
public final class CsvText implements SampleSink {
  private final StringBuilder out = new StringBuilder(1 << 20);
  private final int[] bitOfColumn;
  private final int timeDigits;
  private final int positionDigits;
  private long firstNs = -1;
  private boolean rowOpen;

  /**
   * @param channels channel names in the order of their bits
   * @param columns the same names in the order of the file's columns
   * @param timeDigits digits after the point of a stamp in seconds
   * @param positionDigits digits after the point of a reading
   */
  public CsvText(
      Drive drive,
      String started,
      String zero,
      List<String> channels,
      List<String> columns,
      int timeDigits,
      int positionDigits) {
    bitOfColumn = columns.stream().mapToInt(channels::indexOf).toArray();
    this.timeDigits = timeDigits;
    this.positionDigits = positionDigits;
    out.append("# tripline-recording: 1\n# drive: ").append(drive == Drive.HAND ? "hand" : "motor");
    out.append("\n# started: ").append(started).append('\n');
    if (!zero.isEmpty()) {
      out.append("# zero: ").append(zero).append('\n');
    }
    out.append("time,position,").append(String.join(",", columns)).append(",mark\n");
  }

  @Override
  public void onRow(long timeNs, double reading, long known, long closed) {
    endRow();
    if (firstNs < 0) {
      firstNs = timeNs;
    }
    fixed(timeNs * 1e-9, timeDigits);
    out.append(',');
    if (!Double.isNaN(reading)) {
      fixed(reading, positionDigits);
    }
    for (int c : bitOfColumn) {
      out.append(',');
      if ((known >>> c & 1) != 0) {
        out.append((closed >>> c & 1) != 0 ? '1' : '0');
      }
    }
    out.append(',');
    rowOpen = true;
  }

  @Override
  public void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {
    throw new UnsupportedOperationException("a recording file has no stamped edges");
  }

  @Override
  public void onMark(long timeNs, Mark mark, String text) {
    out.append(text);
  }

  @Override
  public void onLoss(long fromNs, long toNs, long samples) {
    throw new UnsupportedOperationException("a recording file announces no losses");
  }

  /** First stamp, s. */
  public double firstS() {
    return firstNs * 1e-9;
  }

  /** The file. */
  public byte[] bytes() {
    endRow();
    rowOpen = false;
    return out.toString().getBytes(StandardCharsets.UTF_8);
  }

  private void endRow() {
    if (rowOpen) {
      out.append('\n');
    }
  }

  private void fixed(double value, int digits) {
    long scale = 1;
    for (int d = 0; d < digits; d++) {
      scale *= 10;
    }
    long scaled = Math.round(value * scale);
    if (scaled < 0) {
      out.append('-');
      scaled = -scaled;
    }
    out.append(scaled / scale);
    if (digits > 0) {
      String fraction = Long.toString(scaled % scale);
      out.append('.').append("0".repeat(digits - fraction.length())).append(fraction);
    }
  }
}
