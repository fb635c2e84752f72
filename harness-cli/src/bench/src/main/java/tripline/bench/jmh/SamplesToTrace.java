package tripline.bench.jmh;

import java.io.IOException;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import tripline.reduce.Reduction;
import tripline.reduce.Trace;

/** Samples of sixteen contacts to a trace: an operation is a sample. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
public class SamplesToTrace {
  private static final int STROKES = 400_000;
  private static final int MOVING = 30_000;
  private static final int BLOCK = 256;
  private static final long SECOND_NS = 1_000_000_000;

  private final long[] blockNs = new long[BLOCK];
  private final double[] blockReading = new double[BLOCK];
  private SampleTape tape = EMPTY;
  private int movingFrom;
  private long shiftNs;
  private Reduction reduction = new Reduction(SampleTape.settings());

  private static final SampleTape EMPTY = empty();

  private static SampleTape empty() {
    try {
      return SampleTape.of(1, 2);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Makes the samples: at 1 kHz, a stroke every hundred seconds. */
  @Setup
  public void make() throws IOException {
    tape = SampleTape.of(20, 4);
    if (tape.size < STROKES) {
      throw new IllegalStateException(tape.size + " samples");
    }
    movingFrom = tape.size / 4 * 45 / 100;
  }

  /** A reduction for one iteration. */
  @Setup(Level.Iteration)
  public void begin() {
    reduction = new Reduction(SampleTape.settings());
    shiftNs = 0;
  }

  /** Four strokes with their 64 changes, and the trace. */
  @Benchmark
  @OperationsPerInvocation(STROKES)
  public Trace strokes() {
    Reduction whole = new Reduction(SampleTape.settings());
    tape.play(whole, 0, STROKES, 0);
    return whole.finish();
  }

  /** Samples of a stroke, its contacts held: what every sample costs. */
  @Benchmark
  @OperationsPerInvocation(MOVING)
  public Reduction moving() {
    for (int i = movingFrom; i < movingFrom + MOVING; i++) {
      reduction.onRow(tape.timeNs[i] + shiftNs, tape.reading[i], tape.known, 0x5555);
    }
    shiftNs += MOVING * (SECOND_NS / 1000);
    return reduction;
  }

  /** The same, a block of rows at a time as the reader of recordings hands them on. */
  @Benchmark
  @OperationsPerInvocation(MOVING)
  public Reduction blocks() {
    for (int i = movingFrom; i < movingFrom + MOVING; i += BLOCK) {
      int rows = Math.min(BLOCK, movingFrom + MOVING - i);
      for (int k = 0; k < rows; k++) {
        blockNs[k] = tape.timeNs[i + k] + shiftNs;
      }
      System.arraycopy(tape.reading, i, blockReading, 0, rows);
      reduction.onRows(blockNs, blockReading, 0, rows, tape.known, 0x5555);
    }
    shiftNs += MOVING * (SECOND_NS / 1000);
    return reduction;
  }
}
