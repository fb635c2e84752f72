package tripline.cases;

import java.util.List;
import java.util.Optional;
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
 * @param cable the logger's, where it was recorded live and the file is a capture
 */
public record Recording(
    String file,
    Drive drive,
    String zero,
    Actuator actuator,
    Timeline timeline,
    Logger logger,
    long seed,
    List<PoweredStroke> powered,
    Optional<Cable> cable) {

  /** Pushes the rows that were recorded; bits are the indexes of the actuator's channels. */
  public void play(SampleSink sink) {
    if (cable.isPresent()) {
      CaptureBytes capture = capture("00".repeat(32), "");
      CapturedRows.play(capture.end(), actuator.plan().channels(), sink);
    } else {
      sample(sink);
    }
  }

  private void sample(SampleSink sink) {
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
    sample(csv);
    return csv;
  }

  /** The recording as the capture of a logger, not ended yet. */
  CaptureBytes capture(String jobSha256, String tag) {
    CaptureBytes capture =
        new CaptureBytes(
            CaptureBytes.begin(drive, jobSha256, tag),
            actuator.plan().channels(),
            logger.sensor().resolution(),
            cable.orElseThrow(),
            new Rng(seed).split("host"));
    sample(capture);
    return capture;
  }
}
