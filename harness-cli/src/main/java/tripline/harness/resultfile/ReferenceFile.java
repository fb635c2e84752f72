package tripline.harness.resultfile;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tripline.harness.failure.InputFailure;
import tripline.harness.report.Provenance;
import tripline.harness.report.SafeText;
import tripline.job.Direction;
import tripline.job.JobSheet;
import tripline.job.PositionChannel;
import tripline.job.SensorSide;
import tripline.measure.Estimate;
import tripline.sample.ContactState;
import tripline.travel.Reference;

/**
 * What a result file brings to a later analysis of the same actuator.
 *
 * @param reference its stops, lost motion and contact changes
 * @param source the file
 */
public record ReferenceFile(Reference reference, Provenance.Source source) {

  /** Turns per unit agree within this share: a result file has nine digits of them. */
  private static final double SAME = 1e-8;

  /**
   * Reads the hard stops and the judged setting's changes of a result file.
   *
   * @param sheet of the valve at hand
   * @throws InputFailure if the file is no result, or one of another valve, or its readings cannot
   *     be laid beside others of this sheet: of another unit, sense or side of the lost motion
   */
  public static ReferenceFile read(Path path, JobSheet sheet) {
    String tag = sheet.job().tag();
    ResultFile result = ResultFile.read(path);
    if (!result.tag().equals(tag)) {
      throw new InputFailure(
          result.file(),
          "is a result of \"%s\", expected one of \"%s\""
              .formatted(SafeText.line(result.tag()), SafeText.line(tag)));
    }
    Field travel = result.root().key("travel");
    travel
        .optional("sensor")
        .ifPresent(sensor -> holdSameSensor(result.file(), sensor, sheet.position()));
    return new ReferenceFile(
        new Reference(
            result.file(),
            travel.optional("closed_stop").map(ReferenceFile::stop),
            travel.optional("open_stop").map(ReferenceFile::stop),
            travel
                .optional("lost_motion")
                .map(f -> Estimate.of(f.number("value"), f.uncertainty("u"))),
            changes(result.root())),
        new Provenance.Source(result.file(), result.sha256()));
  }

  /** Its stops are readings: in another unit, or of another side, they are other places. */
  private static void holdSameSensor(String file, Field sensor, PositionChannel position) {
    SensorSide side = sensor.word("side", SensorSide.values(), ReferenceFile::word);
    double turnsPerUnit = sensor.number("turns_per_unit");
    double expected = position.turnsPerUnit();
    if (side != position.side()) {
      throw new InputFailure(
          file,
          "was measured on the %s side, expected the %s side as in the sheet"
              .formatted(word(side), word(position.side())));
    }
    if (Math.abs(turnsPerUnit - expected) > SAME * Math.abs(expected)) {
      throw new InputFailure(
          file,
          "was measured with %s turns per unit of reading, expected %s as in the sheet"
              .formatted(turnsPerUnit, expected));
    }
  }

  private static String word(SensorSide side) {
    return side.name().toLowerCase(Locale.ROOT);
  }

  private static Reference.Stop stop(Field stop) {
    return new Reference.Stop(stop.number("value"), stop.uncertainty("u"));
  }

  private static List<Reference.Seen> changes(Field root) {
    int judged = Settings.judged(root);
    List<Reference.Seen> seen = new ArrayList<>();
    for (Field change : root.list("changes")) {
      boolean travelling =
          !change.truth("at_rest") && !change.isAbsent("reading") && !change.isAbsent("direction");
      if (travelling && change.count("setting") == judged) {
        seen.add(
            new Reference.Seen(
                change.text("contact"),
                change.word("to", ContactState.values(), s -> s.name().toLowerCase(Locale.ROOT)),
                change.word("direction", Direction.values(), Direction::word),
                change.number("reading"),
                change.uncertainty("reading_u")));
      }
    }
    return seen;
  }
}
