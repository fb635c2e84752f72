package tripline.bench.jmh;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import tripline.bench.MakeRecording;
import tripline.csv.CsvLayout;
import tripline.csv.CsvReader;
import tripline.csv.CsvRequest;

/** Bytes of a recording of sixteen contacts to samples: an operation is a megabyte. */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
public class CsvToSamples {
  private static final int MEGABYTES = 16;
  private static final int BUFFER = 256 * 1024;

  private byte[] recording = {};

  /** Makes the recording. */
  @Setup
  public void make() throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    MakeRecording.of(MEGABYTES * 1_000_000L, 1000, 0).write(out);
    recording = out.toByteArray();
  }

  /** Reads it in the pieces a file is read in. */
  @Benchmark
  @OperationsPerInvocation(MEGABYTES)
  public double read() {
    Adder adder = new Adder();
    CsvReader reader =
        new CsvReader(CsvLayout.DEFAULT, CsvRequest.all(MakeRecording.channels()), adder);
    for (int at = 0; at < recording.length; at += BUFFER) {
      reader.accept(recording, at, Math.min(BUFFER, recording.length - at));
    }
    reader.finish().ifPresent(fault -> fail(fault.message()));
    return adder.sum();
  }

  private static void fail(String why) {
    throw new IllegalStateException(why);
  }
}
