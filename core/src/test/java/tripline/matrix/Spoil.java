package tripline.matrix;

import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

/** Damage to position readings between two times of a recording, s from its first row. */
final class Spoil implements SampleSink {
  /** What befalls them. */
  enum How {
    /** No readings. */
    GAP,
    /** The reading stands still, and goes on from there by what moved after. */
    FROZEN,
    /** From the first time on the reading is off by the amount. */
    SLIP
  }

  private final SampleSink next;
  private final How how;
  private final double fromS;
  private final double toS;
  private final double amount;
  private long firstNs = Long.MIN_VALUE;
  private double held = Double.NaN;

  Spoil(SampleSink next, How how, double fromS, double toS, double amount) {
    this.next = next;
    this.how = how;
    this.fromS = fromS;
    this.toS = toS;
    this.amount = amount;
  }

  @Override
  public void onRow(long timeNs, double reading, long known, long closed) {
    firstNs = firstNs == Long.MIN_VALUE ? timeNs : firstNs;
    double t = (timeNs - firstNs) * 1e-9;
    boolean within = t >= fromS && t < toS;
    double shown =
        switch (how) {
          case GAP -> within ? Double.NaN : reading;
          case FROZEN -> within ? held : reading;
          case SLIP -> t >= fromS ? reading + amount : reading;
        };
    held = within ? held : reading;
    next.onRow(timeNs, shown, known, closed);
  }

  @Override
  public void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {
    next.onEdge(timeNs, resolutionNs, channel, state);
  }

  @Override
  public void onMark(long timeNs, Mark mark, String text) {
    next.onMark(timeNs, mark, text);
  }

  @Override
  public void onLoss(long fromNs, long toNs, long samples) {
    next.onLoss(fromNs, toNs, samples);
  }
}
