package tripline.csv;

import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.CsvRecordHandler;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import tripline.sample.Channels;
import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

/**
 * Reads a recording as a whole process would, by this reader or by FastCSV with {@code
 * parseDouble}, counting contact edges. Arguments: {@code make FILE MEGABYTES}, {@code ours FILE}
 * or {@code fastcsv FILE}.
 */
public final class Throughput {
  private static final int CONTACTS = 16;
  private static final double SPAN_TURNS = 31;
  private static final int BUFFER_BYTES = 256 * 1024;

  private Throughput() {}

  /** Does what the first argument says with the file that the second one names. */
  public static void main(String[] arguments) throws IOException {
    Path file = Path.of(arguments[1]);
    long start = System.nanoTime();
    String said =
        switch (arguments[0]) {
          case "make" -> make(file, Long.parseLong(arguments[2]) * 1_000_000);
          case "ours" -> ours(file);
          case "fastcsv" -> fastCsv(file);
          default -> throw new IllegalArgumentException(arguments[0]);
        };
    double seconds = (System.nanoTime() - start) / 1e9;
    System.out.printf(
        "%s: %s, %.3f s, %.0f MB/s%n",
        arguments[0], said, seconds, Files.size(file) / seconds / 1e6);
  }

  /** Strokes up and down at 1 kHz, a minute each, sixteen contacts spread over the travel. */
  static String make(Path file, long bytes) throws IOException {
    Random random = new Random(7);
    boolean[] states = new boolean[CONTACTS];
    long written = 0;
    int rows = 0;
    try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), 1 << 16)) {
      StringBuilder line = new StringBuilder("# drive: motor\ntime,position");
      IntStream.rangeClosed(1, CONTACTS).forEach(i -> line.append(",k").append(i));
      line.append(",mark\n");
      while (written < bytes) {
        byte[] row = line.toString().getBytes(StandardCharsets.US_ASCII);
        out.write(row);
        written += row.length;
        line.setLength(0);
        double turns = turns(rows);
        long counts = Math.max(0, Math.round(turns * 1e4 + random.nextGaussian() * 5));
        decimals(line, rows, 1000).append(',');
        decimals(line, counts, 10_000);
        for (int i = 0; i < CONTACTS; i++) {
          double trip = SPAN_TURNS * (i + 0.5) / CONTACTS;
          states[i] = turns > trip + (states[i] ? -0.02 : 0.02);
          line.append(states[i] ? ",1" : ",0");
        }
        line.append(",\n");
        rows++;
      }
    }
    return rows + " rows";
  }

  /** A minute up, a minute down, of which five seconds at rest at either end. */
  private static double turns(int row) {
    int inCycle = row % 120_000;
    int moving = Math.min(Math.max(Math.min(inCycle, 120_000 - inCycle) - 2_500, 0), 55_000);
    return SPAN_TURNS * moving / 55_000;
  }

  /** A number of parts as a decimal number, all of its places written, as loggers do. */
  private static StringBuilder decimals(StringBuilder line, long parts, int perUnit) {
    String places = Long.toString(perUnit + parts % perUnit);
    return line.append(parts / perUnit).append('.').append(places, 1, places.length());
  }

  static String ours(Path file) throws IOException {
    Edges edges = new Edges();
    List<String> names = IntStream.rangeClosed(1, CONTACTS).mapToObj(i -> "k" + i).toList();
    CsvReader reader = new CsvReader(CsvLayout.DEFAULT, CsvRequest.all(new Channels(names)), edges);
    byte[] buffer = new byte[BUFFER_BYTES];
    try (InputStream in = Files.newInputStream(file)) {
      for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
        if (reader.accept(buffer, 0, n).isPresent()) {
          break;
        }
      }
    }
    return reader
        .finish()
        .map(CsvFault::message)
        .orElseGet(() -> edges.rows + " rows, " + edges.edges + " edges, sum " + edges.sum);
  }

  static String fastCsv(Path file) throws IOException {
    Edges edges = new Edges();
    try (de.siegmar.fastcsv.reader.CsvReader<CsvRecord> reader =
        de.siegmar.fastcsv.reader.CsvReader.builder()
            .allowUnclosedQuote(false)
            .commentStrategy(de.siegmar.fastcsv.reader.CommentStrategy.SKIP)
            .build(CsvRecordHandler.of(), file)) {
      boolean header = true;
      for (CsvRecord record : reader) {
        if (header) {
          header = false;
          continue;
        }
        long closed = 0;
        for (int i = 0; i < CONTACTS; i++) {
          closed |= record.getField(2 + i).equals("1") ? 1L << i : 0;
        }
        long ns = (long) (Double.parseDouble(record.getField(0)) * 1e9);
        edges.onRow(ns, Double.parseDouble(record.getField(1)), -1L >>> (64 - CONTACTS), closed);
      }
    }
    return edges.rows + " rows, " + edges.edges + " edges, sum " + edges.sum;
  }

  private static final class Edges implements CsvEvents, SampleSink {
    private long rows;
    private long edges;
    private long last;
    private double sum;

    @Override
    public SampleSink onHeader(CsvHeader header) {
      return this;
    }

    @Override
    public SampleSink onStepBack(long line, long fromNs, long toNs) {
      return this;
    }

    @Override
    public void onRow(long timeNs, double reading, long known, long closed) {
      rows++;
      sum += reading;
      if (closed != last) {
        edges += Long.bitCount(closed ^ last);
        last = closed;
      }
    }

    @Override
    public void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {}

    @Override
    public void onMark(long timeNs, Mark mark, String text) {}

    @Override
    public void onLoss(long fromNs, long toNs, long samples) {}
  }
}
