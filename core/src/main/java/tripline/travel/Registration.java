package tripline.travel;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import tripline.measure.Estimate;

/**
 * Lays one position zero over another by the contact changes both have seen: same contact, same
 * sense, same direction, same setting.
 */
sealed interface Registration {
  /** One cam may have been moved unseen: two that agree are the least. */
  int LEAST_CAMS = 2;

  /** Cams that contradict each other by less than this are not argued about, turns. */
  double AGREE_TURNS = 0.05;

  /** Nor those within this many standard uncertainties. */
  double AGREE_U = 4;

  /**
   * To be added to the turns of the frame laid over the other.
   *
   * @param offset turns; its own parts are one error for the whole frame
   */
  record Laid(Estimate offset) implements Registration {}

  /**
   * It cannot be done.
   *
   * @param why for the reader
   */
  record Refused(String why) implements Registration {}

  /** Registers the landmarks of one frame onto those of another. */
  static Registration of(Survey survey, List<Landmark> onto, List<Landmark> mine) {
    Map<String, List<Estimate>> byCam = new LinkedHashMap<>();
    for (Landmark here : mine) {
      List<Landmark> there = onto.stream().filter(here::matches).toList();
      long alternatives = mine.stream().filter(here::matches).count();
      if (there.size() == 1 && alternatives == 1) {
        String cam = survey.channels().contact(here.channel()).map(c -> c.cam()).orElse("");
        byCam
            .computeIfAbsent(cam, k -> new ArrayList<>())
            .add(there.get(0).turns().minus(here.turns()));
      }
    }
    if (byCam.size() < LEAST_CAMS) {
      return new Refused(
          "its position zero was lost, and only "
              + byCam.size()
              + " cam"
              + (byCam.size() == 1 ? "" : "s")
              + " changed in the same direction and setting as in the reference; "
              + LEAST_CAMS
              + " that agree are needed");
    }
    return agreed(byCam);
  }

  private static Registration agreed(Map<String, List<Estimate>> byCam) {
    Map<String, Estimate> offsets = new LinkedHashMap<>();
    byCam.forEach((cam, all) -> offsets.put(cam, Pool.repeated(all)));
    Estimate middle = median(offsets);
    for (Map.Entry<String, Estimate> entry : offsets.entrySet()) {
      Estimate off = entry.getValue().minus(middle);
      double allowed = Math.max(AGREE_TURNS, AGREE_U * off.u());
      if (Math.abs(off.value()) > allowed) {
        return new Refused(
            String.format(
                Locale.ROOT,
                "its position zero was lost, and the cams do not agree where it was: cam %s says"
                    + " %.3f turns away from the others (%.3f allowed); was it adjusted?",
                entry.getKey(),
                Math.abs(off.value()),
                allowed));
      }
    }
    return new Laid(Pool.repeated(List.copyOf(offsets.values())));
  }

  private static Estimate median(Map<String, Estimate> offsets) {
    List<Estimate> sorted =
        offsets.values().stream().sorted((a, b) -> Double.compare(a.value(), b.value())).toList();
    int n = sorted.size();
    return Estimate.mean(List.of(sorted.get((n - 1) / 2), sorted.get(n / 2)));
  }
}
