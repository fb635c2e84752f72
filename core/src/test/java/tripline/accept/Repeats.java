package tripline.accept;

import java.util.Arrays;
import tripline.assess.Assessment;
import tripline.assess.Bench;
import tripline.assess.Sheets;
import tripline.develop.Stroke.StoppedBy;
import tripline.job.Acceptance;
import tripline.job.Direction;
import tripline.job.JobSheet;
import tripline.sample.Drive;

/**
 * Strokes whose limit contacts change at given deviations from their target; all other cams change
 * at the same place every time. Readings without noise unless told otherwise.
 */
final class Repeats {
  final Bench bench;
  private int pairs;

  private Repeats(JobSheet sheet) {
    bench = new Bench(sheet);
    bench.uOwn = 0;
    bench.uStop = 0;
  }

  static Repeats asking(int strokes, double confidence, double share) {
    return new Repeats(Sheets.asking(new Acceptance(strokes, confidence, share)));
  }

  static Repeats of(double... closing) {
    return asking(2, 0.95, 0.95).close(closing);
  }

  /** Full strokes each way; the cam at the closed end trips so far off while closing. */
  Repeats close(double... deviations) {
    return close(deviations, new double[deviations.length]);
  }

  /** The same with what it does while opening: as many figures. */
  Repeats close(double[] closing, double[] opening) {
    pairs = closing.length;
    for (int i = 0; i < pairs; i++) {
      bench.run(0, Sheets.SPAN, Drive.HAND, StoppedBy.HARD_STOP);
      bench.run(Sheets.SPAN, 0, Drive.HAND, StoppedBy.HARD_STOP);
    }
    for (String channel : new String[] {"k1", "k2", "k5"}) {
      double[] shift = new double[64 + 2 * pairs];
      for (int i = 0; i < pairs; i++) {
        shift[2 * i] = opening[i];
        shift[2 * i + 1] = closing[i];
      }
      bench.shifts.put(channel, shift);
    }
    return this;
  }

  Repeats measured(double uOwn, double uStop) {
    bench.uOwn = uOwn;
    bench.uStop = uStop;
    return this;
  }

  /** A stroke more, anywhere; the cams repeat. */
  Repeats then(double from, double to) {
    bench.run(from, to, Drive.HAND, StoppedBy.OPERATOR);
    return this;
  }

  SettingAcceptance accept() {
    return SettingAcceptance.of(Assessment.of(bench.build()));
  }

  TripAcceptance trip(String cam) {
    return accept().trips().stream()
        .filter(t -> t.target().cam().equals(cam))
        .findFirst()
        .orElseThrow();
  }

  /** Scatter of the closed end's limit contact. */
  SeriesScatter limit(Direction direction) {
    SettingAcceptance accepted = accept();
    TripSeries series =
        accepted.series().stream()
            .filter(s -> s.contact().contact().name().equals("21-22"))
            .filter(s -> s.direction() == direction)
            .findFirst()
            .orElseThrow();
    return SeriesScatter.of(series, java.util.Optional.empty());
  }

  /** Values brought to the size of deviations: around 0, a hundredth of a turn a unit. */
  static double[] scaled(double[] values, double zero, double scale) {
    return Arrays.stream(values).map(v -> (v - zero) * scale).toArray();
  }
}
