package tripline.assess;

import java.util.List;
import java.util.stream.IntStream;
import tripline.develop.Development;
import tripline.job.JobSheet;

/**
 * A development, judged setting by setting: the evidence that findings are looked for in.
 *
 * @param development what was seen
 * @param trust whether the position readings can be relied on
 * @param settings every setting judged, in order; the last counts, the others are as found
 */
public record Assessment(
    Development development, ReadingTrust trust, List<SettingJudgement> settings) {

  public Assessment {
    settings = List.copyOf(settings);
  }

  /** Judges every setting of a development. */
  public static Assessment of(Development development) {
    List<TripTarget> targets = Targets.of(development.sheet(), development.coordinate());
    ReadingTrust trust = ReadingTrust.of(development, targets);
    return new Assessment(
        development,
        trust,
        IntStream.rangeClosed(0, Math.max(0, development.judged()))
            .mapToObj(setting -> Judge.of(development, targets, trust, setting))
            .toList());
  }

  /** The sheet. */
  public JobSheet sheet() {
    return development.sheet();
  }

  /** The setting that counts. */
  public SettingJudgement judged() {
    return settings.get(settings.size() - 1);
  }
}
