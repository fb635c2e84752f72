package tripline.harness.resultfile;

import java.util.List;

/** Which of a result's settings is which. */
final class Settings {
  private Settings() {}

  /** Number of the setting that was judged. */
  static int judged(Field root) {
    List<Field> settings = root.list("settings");
    List<Field> judged = settings.stream().filter(s -> s.truth("judged")).toList();
    if (judged.size() != 1) {
      throw root.wrong("judges " + judged.size() + " of its settings", "one");
    }
    return judged.get(0).count("number");
  }
}
