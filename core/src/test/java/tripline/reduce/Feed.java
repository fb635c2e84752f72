package tripline.reduce;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import tripline.sample.Channels;
import tripline.sample.ContactState;

/** A reduction and short ways to feed it. Times in ms unless a name says otherwise. */
final class Feed {
  static final long MS = 1_000_000;

  /** For rows that carry no position. */
  static final double NONE = Double.NaN;

  final Reduction reduction;

  Feed(ReductionSettings settings) {
    reduction = new Reduction(settings);
  }

  /** So many channels, settling for 10 ms, a reading in handwheel turns with this count. */
  static Feed of(int channels, double quantum) {
    return new Feed(settings(channels, quantum, OptionalDouble.empty(), 1));
  }

  static ReductionSettings settings(
      int channels, double quantum, OptionalDouble modulus, double turnsPerUnit) {
    Channels names =
        new Channels(IntStream.rangeClosed(1, channels).mapToObj(i -> "k" + i).toList());
    return new ReductionSettings(names, 10 * MS, 0, quantum, modulus, turnsPerUnit);
  }

  Feed row(double ms, double reading, long known, long closed) {
    reduction.onRow(Math.round(ms * MS), reading, known, closed);
    return this;
  }

  Feed edge(double ms, double resolutionMs, int channel, ContactState to) {
    reduction.onEdge(Math.round(ms * MS), Math.round(resolutionMs * MS), channel, to);
    return this;
  }

  /** Position rows from a path over seconds, every {@code stepMs}; contacts held. */
  Feed path(
      double fromMs,
      double toMs,
      double stepMs,
      DoubleUnaryOperator readingAtS,
      long known,
      long closed) {
    long n = Math.round((toMs - fromMs) / stepMs);
    for (long k = 0; k < n; k++) {
      double ms = fromMs + k * stepMs;
      row(ms, readingAtS.applyAsDouble(ms * 1e-3), known, closed);
    }
    return this;
  }

  /** The same with channel 0, which closes at an instant: dense rows. */
  Feed pathClosingAt(
      double closesMs, double fromMs, double toMs, double stepMs, DoubleUnaryOperator readingAtS) {
    long n = Math.round((toMs - fromMs) / stepMs);
    for (long k = 0; k < n; k++) {
      double ms = fromMs + k * stepMs;
      row(ms, readingAtS.applyAsDouble(ms * 1e-3), 1, ms >= closesMs ? 1 : 0);
    }
    return this;
  }

  Trace trace() {
    return reduction.finish();
  }

  List<Change> changes() {
    return trace().changes();
  }

  static double counts(double reading, double quantum) {
    return Math.rint(reading / quantum) * quantum;
  }
}
