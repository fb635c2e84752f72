package tripline.cases;

import java.util.List;
import tripline.sample.Drive;
import tripline.sample.SampleSink;
import tripline.truth.Actuator;
import tripline.truth.CsvText;
import tripline.truth.Logger;
import tripline.truth.PoweredStroke;
import tripline.truth.Rng;
import tripline.truth.Timeline;

/**
 * One recording of a case.
 *
 * @param file file name
 * @param drive what moved the valve
 * @param zero metadata: kept, lost, or empty
 * @param actuator what truly happened
 * @param timeline what the inputs saw
 * @param logger what recorded it
 * @param seed of the logger's noise
 * @param powered powered strokes, in order
 */
public record Recording(
    String file,
    Drive drive,
    String zero,
    Actuator actuator,
    Timeline timeline,
    Logger logger,
    long seed,
    List<PoweredStroke> powered) {

  /** Pushes the rows; bits are the indexes of the actuator's channels. */
  public void play(SampleSink sink) {
    logger.record(
        actuator.path(),
        timeline,
        actuator.plan().channels().size(),
        actuator.marks(),
        new Rng(seed),
        sink);
  }

  /** The recording as a file. */
  public CsvText csv(List<String> columns) {
    double resolution = logger.sensor().resolution();
    int digits = resolution <= 0 ? 6 : Math.max(0, (int) Math.ceil(-Math.log10(resolution) - 1e-9));
    int timeDigits = logger.plan().stampNs() >= 1_000_000 ? 3 : 6;
    CsvText csv =
        new CsvText(
            drive,
            "2026-03-02T08:14:05Z",
            zero,
            actuator.plan().channels(),
            columns,
            timeDigits,
            digits);
    play(csv);
    return csv;
  }
}
