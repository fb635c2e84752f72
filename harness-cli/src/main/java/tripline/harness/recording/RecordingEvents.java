package tripline.harness.recording;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tripline.csv.CsvEvents;
import tripline.csv.CsvHeader;
import tripline.job.JobSheet;
import tripline.reduce.Reduction;
import tripline.reduce.ReductionSettings;
import tripline.sample.SampleSink;

/** Hands a reduction to each stretch of a recording in which time only goes forward. */
final class RecordingEvents implements CsvEvents {
  /** Steps back reported one by one; a clock that keeps stepping is reported by their number. */
  private static final int MOST_STEPS_TOLD = 5;

  private static final int MOST_NAMES = 12;

  /** A reduction a stretch: a clock that steps back in every row must not fill the memory. */
  static final int MOST_STRETCHES = 64;

  private final JobSheet sheet;
  private final List<Reduction> reductions = new ArrayList<>();
  private final List<String> notices = new ArrayList<>();
  private @Nullable CsvHeader header;
  private int steps;
  private long tooManyLine;

  RecordingEvents(JobSheet sheet) {
    this.sheet = sheet;
  }

  @Override
  public SampleSink onHeader(CsvHeader read) {
    header = read;
    if (!read.ignored().isEmpty()) {
      notices.add("columns that nobody asks for: " + some(read.ignored()));
    }
    if (!read.absent().isEmpty()) {
      notices.add("no column for the channels " + some(read.absent()));
    }
    return begin();
  }

  @Override
  public SampleSink onStepBack(long line, long fromNs, long toNs) {
    steps++;
    if (steps <= MOST_STEPS_TOLD) {
      notices.add(
          "line %d: time steps back by %.6f s; analysed on either side of it as two"
              .formatted(line, (fromNs - toNs) * 1e-9));
    }
    if (reductions.size() == MOST_STRETCHES) {
      tooManyLine = tooManyLine == 0 ? line : tooManyLine;
      return new Discard();
    }
    return begin();
  }

  private static String some(List<String> names) {
    String shown = String.join(", ", names.subList(0, Math.min(MOST_NAMES, names.size())));
    int more = names.size() - MOST_NAMES;
    return more > 0 ? shown + " and " + more + " more" : shown;
  }

  private Reduction begin() {
    Reduction reduction =
        new Reduction(
            new ReductionSettings(
                sheet.channels(),
                sheet.settleNs(),
                sheet.position().skewNs(),
                sheet.position().resolution(),
                sheet.position().modulus(),
                sheet.position().turnsPerUnit()));
    reductions.add(reduction);
    return reduction;
  }

  /** Line at which time stepped back once too often; 0 where it did not. */
  long tooManyLine() {
    return tooManyLine;
  }

  CsvHeader header() {
    if (header == null) {
      throw new IllegalStateException("a recording without a header");
    }
    return header;
  }

  List<Reduction> reductions() {
    return reductions;
  }

  List<String> notices() {
    List<String> all = new ArrayList<>(notices);
    if (steps > MOST_STEPS_TOLD) {
      all.add("time steps back %d times in all".formatted(steps));
    }
    return all;
  }
}
