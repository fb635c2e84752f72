package tripline.travel;

import java.util.List;
import java.util.OptionalDouble;
import tripline.reduce.Movement;
import tripline.reduce.Trace;

/**
 * Which recordings share a position zero. A recording that kept the zero of the one before it
 * stands in the same frame; where the reading wraps it is shifted by whole wraps to begin as near
 * as possible to where that one ended.
 */
final class ZeroFrames {
  private final int[] frames;
  private final double[] shifts;

  private ZeroFrames(int[] frames, double[] shifts) {
    this.frames = frames;
    this.shifts = shifts;
  }

  static ZeroFrames of(List<RecordingTrace> recordings, OptionalDouble modulus) {
    int[] frames = new int[recordings.size()];
    double[] shifts = new double[recordings.size()];
    for (int r = 1; r < frames.length; r++) {
      boolean kept = recordings.get(r).zero() == RecordingTrace.Zero.KEPT;
      frames[r] = kept ? frames[r - 1] : frames[r - 1] + 1;
      if (kept && modulus.isPresent()) {
        double before = lastReading(recordings.get(r - 1).trace()) + shifts[r - 1];
        double wraps =
            Math.rint((before - firstReading(recordings.get(r).trace())) / modulus.getAsDouble());
        shifts[r] = Double.isNaN(wraps) ? shifts[r - 1] : wraps * modulus.getAsDouble();
      }
    }
    return new ZeroFrames(frames, shifts);
  }

  /** Frame of a recording, counted from 0 in order. */
  int frame(int recording) {
    return frames[recording];
  }

  /** To be added to the readings of a recording, reading units. */
  double shift(int recording) {
    return shifts[recording];
  }

  /** How many frames. */
  int count() {
    return frames.length == 0 ? 0 : frames[frames.length - 1] + 1;
  }

  /** First recording of a frame. */
  int firstRecording(int frame) {
    int r = 0;
    while (frames[r] != frame) {
      r++;
    }
    return r;
  }

  /** Reading at the first movement, reading units; NaN where no position was read. */
  static double firstReading(Trace trace) {
    return trace.movements().isEmpty() ? Double.NaN : begin(trace.movements().get(0));
  }

  /** Reading at the end of the last movement, reading units; NaN where no position was read. */
  static double lastReading(Trace trace) {
    int n = trace.movements().size();
    return n == 0 ? Double.NaN : end(trace.movements().get(n - 1));
  }

  private static double begin(Movement movement) {
    return movement instanceof Movement.Move move
        ? move.from()
        : ((Movement.Rest) movement).reading();
  }

  private static double end(Movement movement) {
    return movement instanceof Movement.Move move
        ? move.to()
        : ((Movement.Rest) movement).reading();
  }
}
