package tripline.harness.conform;

import java.util.List;
import tripline.link.EdgeBlock;
import tripline.link.LinkMessage;
import tripline.link.LossMessage;
import tripline.link.MarkMessage;
import tripline.link.SampleBlock;
import tripline.link.Status;

/** When each message says that it happened, on a clock that does not wrap (SPEC §4). */
final class Times {
  private static final long NS_A_MICRO = 1000;

  private final long[] firstNs;
  private final long[] lastNs;

  Times(List<Heard> heard, int clockBits) {
    firstNs = new long[heard.size()];
    lastNs = new long[heard.size()];
    int unused = Long.SIZE - clockBits;
    long micros = 0;
    long before = 0;
    for (int i = 0; i < heard.size(); i++) {
      LinkMessage message = heard.get(i).message();
      if (tells(message)) {
        long stamp = stamp(message);
        micros = i == 0 ? stamp : micros + (((stamp - before) << unused) >> unused);
        before = stamp;
      }
      firstNs[i] = micros * NS_A_MICRO + fraction(message);
      lastNs[i] = firstNs[i] + extentNs(message);
    }
  }

  /** Whether a message tells of a moment. */
  static boolean tells(LinkMessage message) {
    return message instanceof SampleBlock
        || message instanceof EdgeBlock
        || message instanceof MarkMessage
        || message instanceof LossMessage
        || message instanceof Status;
  }

  /** As sent. */
  static long stamp(LinkMessage message) {
    if (message instanceof SampleBlock block) {
      return block.stampMicros();
    } else if (message instanceof EdgeBlock edges) {
      return edges.stampMicros();
    } else if (message instanceof MarkMessage mark) {
      return mark.stampMicros();
    } else if (message instanceof LossMessage loss) {
      return loss.stampMicros();
    }
    return ((Status) message).stampMicros();
  }

  private static long fraction(LinkMessage message) {
    return message instanceof EdgeBlock edges && edges.edges() > 0
        ? edges.fractionNs() + edges.gapNs(0)
        : 0;
  }

  /** From the first row or edge to the last. */
  private static long extentNs(LinkMessage message) {
    long extent = 0;
    if (message instanceof SampleBlock block) {
      extent = block.periodNs() * (block.rows() - 1L);
      for (int row = 1; row < block.rows(); row++) {
        extent += block.gapMicros(row) * NS_A_MICRO;
      }
    } else if (message instanceof EdgeBlock edges) {
      for (int edge = 1; edge < edges.edges(); edge++) {
        extent += edges.gapNs(edge);
      }
    }
    return extent;
  }

  /** Of its first row, edge, or of itself. */
  long firstNs(int index) {
    return firstNs[index];
  }

  /** Of its last row or edge. */
  long lastNs(int index) {
    return lastNs[index];
  }
}
