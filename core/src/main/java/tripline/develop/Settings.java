package tripline.develop;

import java.util.ArrayList;
import java.util.List;
import tripline.travel.Adjustment;
import tripline.travel.Survey;

/** The stretches between adjustments, over all recordings. */
final class Settings {
  private static final double NS_PER_S = 1e9;

  private Settings() {}

  static List<Setting> of(Survey survey) {
    List<Setting> settings = new ArrayList<>();
    int recording = 0;
    double fromS = 0;
    for (Adjustment adjustment : survey.adjustments()) {
      double atS = seconds(survey, adjustment.recording(), adjustment.timeNs());
      settings.add(new Setting(settings.size(), recording, fromS, atS));
      recording = adjustment.recording();
      fromS = atS;
    }
    int last = survey.recordings().size() - 1;
    long lastNs = survey.recordings().get(last).trace().lastNs();
    settings.add(new Setting(settings.size(), recording, fromS, seconds(survey, last, lastNs)));
    return settings;
  }

  private static double seconds(Survey survey, int recording, long timeNs) {
    return (timeNs - survey.recordings().get(recording).trace().firstNs()) / NS_PER_S;
  }
}
