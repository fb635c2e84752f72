package tripline.study;

import java.util.ArrayList;
import java.util.List;
import tripline.measure.Shape;
import tripline.reduce.Change;
import tripline.reduce.Outline;
import tripline.reduce.Place;
import tripline.reduce.Trace;
import tripline.sample.Channels;
import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

/**
 * The textbook's answer for straight motion, to check the yardstick itself: keeps everything, fits
 * a least-squares line to all readings within half a second of a change's bracket. It attains the
 * floor by construction; good for nothing else.
 */
final class TextbookReducer implements Reducer, SampleSink {
  private static final double HALF_WINDOW_S = 0.5;

  private final Channels channels;
  private final double sigma;
  private final long settleNs;
  private final List<double[]> readings = new ArrayList<>();
  private final List<long[]> brackets = new ArrayList<>();
  private final List<Integer> bracketChannels = new ArrayList<>();
  private final long[] firstEdge;
  private final long[] beforeEdge;
  private final long[] lastEdge;
  private long settled = -1;
  private long now = -1;
  private long lastNs = Long.MIN_VALUE;

  TextbookReducer(Channels channels, double sigma, long settleNs) {
    this.channels = channels;
    this.sigma = sigma;
    this.settleNs = settleNs;
    firstEdge = new long[channels.size()];
    beforeEdge = new long[channels.size()];
    lastEdge = new long[channels.size()];
  }

  @Override
  public SampleSink sink() {
    return this;
  }

  @Override
  public void onRow(long timeNs, double reading, long known, long closed) {
    readings.add(new double[] {timeNs * 1e-9, reading});
    if (lastNs == Long.MIN_VALUE) {
      settled = closed;
      now = closed;
    }
    for (int c = 0; c < channels.size(); c++) {
      long bit = 1L << c;
      if (((closed ^ now) & bit) != 0) {
        if (firstEdge[c] == 0) {
          firstEdge[c] = timeNs;
          beforeEdge[c] = lastNs;
        }
        lastEdge[c] = timeNs;
      } else if (firstEdge[c] != 0 && timeNs - lastEdge[c] >= settleNs) {
        if (((now ^ settled) & bit) != 0) {
          settled ^= bit;
          brackets.add(new long[] {beforeEdge[c], firstEdge[c], (settled >>> c) & 1});
          bracketChannels.add(c);
        }
        firstEdge[c] = 0;
      }
    }
    now = closed;
    lastNs = timeNs;
  }

  @Override
  public void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {
    throw new UnsupportedOperationException("rows only");
  }

  @Override
  public void onMark(long timeNs, Mark mark, String text) {}

  @Override
  public void onLoss(long fromNs, long toNs, long samples) {}

  @Override
  public Trace finish() {
    List<Change> changes = new ArrayList<>();
    for (int i = 0; i < brackets.size(); i++) {
      long[] b = brackets.get(i);
      ContactState to = b[2] == 1 ? ContactState.CLOSED : ContactState.OPEN;
      double at = (b[0] + b[1]) * 0.5e-9;
      changes.add(
          new Change(
              bracketChannels.get(i), to, b[0], b[1], b[1], 0, fit(at), Change.Motion.MOVING));
    }
    Trace.States states = new Trace.States(0, 0);
    return new Trace(
        channels,
        0,
        lastNs,
        readings.size(),
        readings.size(),
        sigma,
        0,
        0,
        List.of(),
        changes,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        states,
        states,
        new Outline(List.of()));
  }

  private Place fit(double atS) {
    double n = 0;
    double st = 0;
    double sr = 0;
    double stt = 0;
    double str = 0;
    for (double[] p : readings) {
      double t = p[0] - atS;
      if (Math.abs(t) <= HALF_WINDOW_S) {
        n++;
        st += t;
        sr += p[1];
        stt += t * t;
        str += t * p[1];
      }
    }
    double det = n * stt - st * st;
    double slope = (n * str - st * sr) / det;
    double level = (sr - slope * st) / n;
    return new Place(
        level,
        sigma * Math.sqrt(stt / det),
        Shape.NORMAL,
        slope,
        sigma * Math.sqrt(n / det),
        (int) n);
  }
}
