package tripline.matrix;

import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;
import tripline.cases.Recording;
import tripline.cases.Site;
import tripline.job.JobSheet;
import tripline.sample.SampleSink;

/**
 * One valve with at most one fault.
 *
 * @param sheet what was intended
 * @param recordings what was recorded
 * @param spoilt what befalls the samples on their way
 * @param size of the fault relative to what is gross: 1 and more must be found
 * @param also codes that rightly come with it
 */
record Specimen(
    JobSheet sheet,
    List<Recording> recordings,
    UnaryOperator<SampleSink> spoilt,
    double size,
    Set<String> also) {

  static Specimen of(Site site, double size, String... also) {
    return new Specimen(site.sheet(), site.recordings(), sink -> sink, size, Set.of(also));
  }

  Specimen spoilt(UnaryOperator<SampleSink> by) {
    return new Specimen(sheet, recordings, by, size, also);
  }
}
