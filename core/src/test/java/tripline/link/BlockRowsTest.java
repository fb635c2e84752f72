package tripline.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

class BlockRowsTest {
  private static final int CASES = 5_000;
  private static final long FIRST_NS = 1_000_000_000;
  private static final ChannelDescription POSITION =
      ChannelDescription.position("p", "turn", -3, 24, 0, 0);

  private final BlockRows rows = new BlockRows();
  private final byte[] body = new byte[Layout.MOST_BODY];

  @Test
  void everyRowComesOnceAsItWasSent() {
    for (int seed = 1; seed <= CASES; seed++) {
      Random random = new Random(seed);
      SampleBlock sent = block(random);
      sent.writeBody(body);
      rows.read(body, FIRST_NS, POSITION);
      assertThat(walked(random)).as("seed %d", seed).isEqualTo(expected(sent));
    }
  }

  @Test
  void withoutAPositionChannelNoRowHasAReading() {
    SampleBlock sent = new SampleBlock().begin(0, 0, 1_000, 1);
    sent.add(5, 1, 0);
    sent.add(6, 1, 0);
    sent.writeBody(body);
    rows.read(body, FIRST_NS, null);
    Heard heard = new Heard();
    rows.send(heard, 0, rows.size(), 1, 1);
    assertThat(heard.rows).containsExactly("1000000000 NaN 1", "1000001000 NaN 1");
  }

  /** Every width of steps, levels and gaps, gaps of nothing, rows without a reading. */
  private static SampleBlock block(Random random) {
    long periodNs = random.nextBoolean() ? 0 : 1 + random.nextInt(2_000_000);
    int mostStep = 1 << (1 + random.nextInt(24));
    int mostGap = 1 << random.nextInt(20);
    int changes = 1 + random.nextInt(20);
    long known = random.nextLong();
    SampleBlock block = new SampleBlock().begin(random.nextInt(1000), 0, periodNs, known);
    int size = 1 + random.nextInt(60);
    int count = random.nextInt(1000);
    long levels = random.nextLong();
    for (int i = 0; i < size; i++) {
      levels ^= random.nextInt(changes) == 0 ? 1L << random.nextInt(64) : 0;
      count += random.nextInt(mostStep) - mostStep / 2;
      long gap = random.nextInt(3) == 0 ? 0 : random.nextInt(mostGap);
      boolean fits =
          random.nextInt(10) > 0
              ? block.add(count, levels, gap)
              : block.addWithoutReading(levels, gap);
      if (!fits) {
        break;
      }
    }
    return block;
  }

  /** Rows as the block itself gives them, one by one. */
  private static List<String> expected(SampleBlock block) {
    List<String> all = new ArrayList<>();
    long timeNs = FIRST_NS;
    for (int i = 0; i < block.rows(); i++) {
      timeNs += i == 0 ? 0 : block.periodNs() + 1000 * block.gapMicros(i);
      double reading = block.hasReading(i) ? block.counts(i) * -3.0 / 24 : Double.NaN;
      all.add(timeNs + " " + reading + " " + block.levels(i));
    }
    return all;
  }

  /** The rows stretch by stretch, as far as now this, now that event would let them go. */
  private List<String> walked(Random random) {
    List<String> all = new ArrayList<>();
    int row = 0;
    while (row < rows.size()) {
      long spanNs = rows.timeNs(rows.size() - 1) - rows.timeNs(row);
      long beforeNs = rows.timeNs(row) + 1 + (long) (2 * random.nextDouble() * spanNs);
      int end = rows.endOfLike(row, beforeNs);
      assertThat(rows.timeNs(end - 1)).isLessThan(beforeNs);
      Heard heard = new Heard();
      rows.send(heard, row, end, -1, rows.levels(row));
      all.addAll(heard.rows);
      row = end;
    }
    return all;
  }

  /** Takes rows that rise in time, and nothing else. */
  private static final class Heard implements SampleSink {
    final List<String> rows = new ArrayList<>();
    private long lastNs = Long.MIN_VALUE;

    @Override
    public void onRow(long timeNs, double reading, long known, long closed) {
      assertThat(timeNs).isGreaterThan(lastNs);
      lastNs = timeNs;
      rows.add(timeNs + " " + reading + " " + closed);
    }

    @Override
    public void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {
      throw new AssertionError("an edge");
    }

    @Override
    public void onMark(long timeNs, Mark mark, String text) {
      throw new AssertionError("a mark");
    }

    @Override
    public void onLoss(long fromNs, long toNs, long samples) {
      throw new AssertionError("a loss");
    }
  }
}
