package tripline.bench.jmh;

import java.io.ByteArrayOutputStream;
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
import tripline.link.ChannelDescription;
import tripline.link.Encoding;
import tripline.link.Identity;
import tripline.link.LinkDecoder;
import tripline.link.LinkEncoder;
import tripline.link.LinkMessage;
import tripline.link.LinkSamples;
import tripline.link.Reports;
import tripline.link.SampleBlock;

/** Frames of a logger of sixteen contacts to samples: an operation is a megabyte. */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
public class LinkToSamples {
  private static final int MEGABYTES = 4;
  private static final int PIECE = 4096;
  private static final int ROWS_A_BLOCK = 50;
  private static final long PERIOD_NS = 1_000_000;
  private static final long SPAN_COUNTS = 310_000;

  /** About half a turn a second. */
  private static final long COUNTS_A_ROW = 5;

  private final Adder adder = new Adder();
  private final LinkSamples samples = new LinkSamples(MakeRecording.channels(), why -> adder);
  private final LinkDecoder decoder = new LinkDecoder(samples);
  private final LinkEncoder encoder = new LinkEncoder();
  private byte[] stream = {};

  /** Makes the stream: the whole of one clock of 32 bits, so that it can be played again. */
  @Setup
  public void make() {
    ByteArrayOutputStream description = new ByteArrayOutputStream();
    int contacts = MakeRecording.channels().size();
    add(description, new Identity(1, 0, 32, contacts, 1, 3, 512, 0, 5, 1, 1, "", "", ""));
    add(description, ChannelDescription.position("position", "turn", 1, 10_000, 0, 0));
    for (int i = 0; i < contacts; i++) {
      String name = MakeRecording.channels().contacts().get(i);
      add(description, ChannelDescription.contact(i, name, 1, Reports.SAMPLED, 0, 0));
    }
    decoder.accept(description.toByteArray(), 0, description.size());
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    long row = 0;
    while (out.size() < MEGABYTES * 1_000_000) {
      long stamp = row * (PERIOD_NS / 1000) & 0xffff_ffffL;
      SampleBlock block = new SampleBlock().begin(row, stamp, PERIOD_NS, 0xffff);
      for (int i = 0; i < ROWS_A_BLOCK; i++) {
        long travel = row * COUNTS_A_ROW % SPAN_COUNTS;
        long noise = row * 0x9E37_79B9_7F4A_7C15L >>> 60;
        block.add((int) (travel + noise), travel > SPAN_COUNTS / 2 ? 0x5555 : 0x55aa, 0);
        row++;
      }
      add(out, block);
    }
    stream = out.toByteArray();
  }

  private void add(ByteArrayOutputStream out, LinkMessage message) {
    byte[] bytes = new byte[LinkEncoder.MOST_BYTES];
    out.write(bytes, 0, encoder.encode(message, Encoding.FRAMES, bytes, 0));
  }

  /** Decodes it in the pieces a port is read in. */
  @Benchmark
  @OperationsPerInvocation(MEGABYTES)
  public double decode() {
    long before = samples.rows();
    for (int at = 0; at < stream.length; at += PIECE) {
      decoder.accept(stream, at, Math.min(PIECE, stream.length - at));
    }
    if (samples.rows() == before) {
      throw new IllegalStateException("no rows came of it");
    }
    return adder.sum();
  }
}
