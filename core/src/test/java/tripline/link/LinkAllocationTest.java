package tripline.link;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.List;
import org.junit.jupiter.api.Test;
import tripline.sample.Channels;
import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

/** A million samples from bytes to the sink allocate nothing. */
class LinkAllocationTest {
  private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

  /** Adds up what comes, so that nothing is optimised away. */
  private static final class Sum implements SampleSink {
    private long rows;
    private long edges;
    private double sum;

    @Override
    public void onRow(long timeNs, double reading, long known, long closed) {
      rows++;
      sum += reading + closed;
    }

    @Override
    public void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {
      edges++;
    }

    @Override
    public void onMark(long timeNs, Mark mark, String text) {}

    @Override
    public void onLoss(long fromNs, long toNs, long samples) {}
  }

  private static final int ATTEMPTS = 3;

  @Test
  void samplesAndEdgesInFramesAndInLines() {
    for (Encoding encoding : Encoding.values()) {
      int blocks = encoding == Encoding.FRAMES ? 40_000 : 4_000;
      Sum sum = new Sum();
      LinkSamples samples = new LinkSamples(new Channels(List.of("k2", "k1")), why -> sum);
      LinkDecoder decoder = new LinkDecoder(samples);
      byte[] description = description(encoding);
      decoder.accept(description, 0, description.length);
      byte[] stream = stream(encoding, 2_000);
      int warmUps = 4;
      for (int i = 0; i < warmUps; i++) {
        decoder.accept(stream, 0, stream.length);
      }
      long rowsBefore = sum.rows;
      int rounds = blocks / 2_000;
      long self = THREADS.getThreadAllocatedBytes(Thread.currentThread().getId());
      self = THREADS.getThreadAllocatedBytes(Thread.currentThread().getId()) - self;
      // What the virtual machine itself allocates once (a class it loads late) is no steady state.
      long least = Long.MAX_VALUE;
      for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
        long before = THREADS.getThreadAllocatedBytes(Thread.currentThread().getId());
        for (int i = 0; i < rounds; i++) {
          decoder.accept(stream, 0, stream.length);
        }
        long after = THREADS.getThreadAllocatedBytes(Thread.currentThread().getId());
        least = Math.min(least, after - before - self);
      }
      assertThat(sum.rows - rowsBefore).isEqualTo(25L * blocks * ATTEMPTS);
      assertThat(sum.edges).isPositive();
      assertThat(sum.sum).isNotZero();
      assertThat(least).as(encoding.name()).isZero();
    }
  }

  static byte[] description(Encoding encoding) {
    return Streams.of(
        encoding,
        new Identity(1, 0, 32, 2, 1, 3, 512, 0, 5, 1, 1, "", "", ""),
        ChannelDescription.position("position", "turn", 1, 2000, 0, 0),
        ChannelDescription.contact(0, "k1", 1, Reports.BOTH, 0, 1000),
        ChannelDescription.contact(1, "k2", 0, Reports.SAMPLED, 0, 0));
  }

  /**
   * Blocks of 25 rows with an edge each, on a clock of 32 bits that this stream takes once round.
   */
  private static byte[] stream(Encoding encoding, int blocks) {
    RandomMessages random = new RandomMessages(3);
    LinkMessage[] all = new LinkMessage[2 * blocks];
    for (int i = 0; i < blocks; i++) {
      long stamp = i * ((1L << 32) / blocks);
      EdgeBlock edge = new EdgeBlock().begin(i, stamp, 0);
      edge.add(0, 0, i & 1);
      all[2 * i] = edge;
      SampleBlock from = random.typical(i, 25);
      SampleBlock block = new SampleBlock().begin(25L * i, stamp, 1_000_000, 3);
      for (int row = 0; row < 25; row++) {
        block.add(from.counts(row), from.levels(row), 0);
      }
      all[2 * i + 1] = block;
    }
    return Streams.of(encoding, all);
  }
}
