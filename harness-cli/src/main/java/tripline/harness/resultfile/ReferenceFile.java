package tripline.harness.resultfile;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import tripline.harness.failure.InputFailure;
import tripline.harness.report.Provenance;
import tripline.harness.report.SafeText;
import tripline.job.Direction;
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

  /**
   * Reads the hard stops and the judged setting's changes of a result file.
   *
   * @param tag plant tag of the valve at hand; a result of another one is refused
   * @throws InputFailure if the file is no result, or one of another valve
   */
  public static ReferenceFile read(Path path, String tag) {
    ResultFile result = ResultFile.read(path);
    if (!result.tag().equals(tag)) {
      throw new InputFailure(
          result.file(),
          "is a result of \"%s\", expected one of \"%s\""
              .formatted(SafeText.line(result.tag()), SafeText.line(tag)));
    }
    Field travel = result.root().key("travel");
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
                change.word(
                    "to", ContactState.values(), s -> s.name().toLowerCase(java.util.Locale.ROOT)),
                change.word("direction", Direction.values(), Direction::word),
                change.number("reading"),
                change.uncertainty("reading_u")));
      }
    }
    return seen;
  }
}
