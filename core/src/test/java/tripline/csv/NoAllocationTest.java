package tripline.csv;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tripline.sample.Channels;
import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

/** A million rows, of each kind a logger may write, allocate nothing. */
class NoAllocationTest {
  private static final int PIECE_ROWS = 1000;
  private static final int ROWS = 1_000_000;

  /**
   * Left for what the virtual machine itself may do on the thread: less than a byte in ten rows.
   */
  private static final long SPARE_BYTES = 64 * 1024;

  private record Kind(String name, CsvTimeUnit unit, String row) {
    @Override
    public String toString() {
      return name;
    }
  }

  static Stream<Kind> kinds() {
    return Stream.of(
        new Kind("plain", CsvTimeUnit.S, "0.%09d,%d.5,1,0,1,\n"),
        new Kind("sparse", CsvTimeUnit.S, "0.%09d,,,0,,\n"),
        new Kind("quoted", CsvTimeUnit.US, "\"%d\",\"%d.25\",\"1\",\"closed\",0,\n"),
        new Kind("blanks", CsvTimeUnit.MS, " %d , %d.125 , 1 , 0, off ,\n"),
        new Kind("exponents", CsvTimeUnit.NS, "%d.000000000000000000e+00,-%d.e-2,1,0,1,\n"),
        new Kind("long numbers", CsvTimeUnit.NS, "%d,%d.1234567890123,1,0,1,\n"),
        new Kind("stamps", CsvTimeUnit.ISO, "2026-03-02T08:14:05.%09d+01:00,%d,1,0,1,\n"));
  }

  @ParameterizedTest
  @MethodSource("kinds")
  void aMillionRowsAllocateNothing(Kind kind) {
    CsvLayout plain = CsvLayout.DEFAULT;
    CsvLayout layout =
        new CsvLayout(
            ',',
            '.',
            "time",
            kind.unit(),
            "position",
            plain.closed(),
            plain.open(),
            Optional.empty());
    Counter counter = new Counter();
    CsvReader reader =
        new CsvReader(layout, CsvRequest.all(new Channels(List.of("k1", "k2", "k3"))), counter);
    byte[] header = "time,position,k1,k2,k3,mark\n".getBytes(StandardCharsets.UTF_8);
    assertThat(reader.accept(header, 0, header.length)).isEmpty();
    byte[] warm = rows(kind, 0);
    assertThat(reader.accept(warm, 0, warm.length)).isEmpty();

    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    byte[] piece = rows(kind, 1);
    long before = threads.getCurrentThreadAllocatedBytes();
    long faults = 0;
    for (int i = 0; i < ROWS / PIECE_ROWS; i++) {
      // Cut anew each time, so that some row is always carried over.
      int cut = 1 + i % (piece.length - 1);
      faults += reader.accept(piece, 0, cut).isPresent() ? 1 : 0;
      faults += reader.accept(piece, cut, piece.length - cut).isPresent() ? 1 : 0;
    }
    long allocated = threads.getCurrentThreadAllocatedBytes() - before;

    assertThat(faults).isZero();
    assertThat(counter.rows).isEqualTo(ROWS + PIECE_ROWS);
    assertThat(allocated).isLessThan(SPARE_BYTES);
  }

  /** Always the same stamp, so that a piece can be read again and again. */
  private static byte[] rows(Kind kind, int ns) {
    StringBuilder text = new StringBuilder();
    Random random = new Random(1);
    for (int i = 0; i < PIECE_ROWS; i++) {
      text.append(String.format(java.util.Locale.ROOT, kind.row(), ns, random.nextInt(100_000)));
    }
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static final class Counter implements CsvEvents, SampleSink {
    private long rows;

    @Override
    public SampleSink onHeader(CsvHeader header) {
      return this;
    }

    @Override
    public SampleSink onStepBack(long line, long fromNs, long toNs) {
      throw new AssertionError("no step back here");
    }

    @Override
    public void onRow(long timeNs, double reading, long known, long closed) {
      rows++;
    }

    @Override
    public void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {}

    @Override
    public void onMark(long timeNs, Mark mark, String text) {}

    @Override
    public void onLoss(long fromNs, long toNs, long samples) {}
  }
}
