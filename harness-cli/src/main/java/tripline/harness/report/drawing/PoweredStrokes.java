package tripline.harness.report.drawing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import tripline.harness.report.StrokeNumbers;
import tripline.result.Result;
import tripline.result.Result.Measured;
import tripline.result.Result.MotorResult;
import tripline.result.Result.StrokeResult;

/** Strokes under power, in order. */
final class PoweredStrokes {
  private PoweredStrokes() {}

  /** A stroke, its recording and its number over all recordings. */
  record One(int number, int recording, StrokeResult stroke) {
    Optional<Double> margin() {
      return Optional.ofNullable(stroke.motor()).map(MotorResult::margin).map(Measured::value);
    }
  }

  static List<One> of(Result result) {
    List<One> strokes = new ArrayList<>();
    for (int r = 0; r < result.recordings().size(); r++) {
      for (StrokeResult stroke : result.recordings().get(r).strokes()) {
        if (stroke.motor() != null) {
          strokes.add(new One(StrokeNumbers.of(result, r, stroke.number()), r, stroke));
        }
      }
    }
    return strokes;
  }

  /** The one with the least margin at each end; none where no margin is known. */
  static List<One> closest(List<One> strokes) {
    return Stream.of("opening", "closing")
        .flatMap(
            direction ->
                strokes.stream()
                    .filter(o -> o.stroke().direction().equals(direction))
                    .filter(o -> o.margin().isPresent())
                    .min(Comparator.comparing(o -> o.margin().orElseThrow()))
                    .stream())
        .toList();
  }
}
