package tripline.harness.report;

import java.util.List;
import tripline.result.Result;
import tripline.result.Result.CamResult;
import tripline.result.Result.ContactResult;
import tripline.result.Result.Stretch;

/**
 * What was seen of a contact in the direction its cam is judged in: toward the end its trip point
 * is measured from. Where nothing was seen that way, the other direction stands in.
 *
 * @param direction {@code opening} or {@code closing}
 * @param closed travel over which it was seen closed, x
 * @param covered travel over which it was seen at all, x; empty where it was not exercised
 */
public record SeenStretches(String direction, List<Stretch> closed, List<Stretch> covered) {

  /** In the direction its cam is judged in, else the other. */
  public static SeenStretches of(Result result, ContactResult contact) {
    String judged =
        result.cams().stream()
            .filter(c -> c.cam().equals(contact.cam()))
            .findFirst()
            .map(CamResult::from)
            .map(from -> from.equals("open") ? "opening" : "closing")
            .orElse("closing");
    SeenStretches that = in(judged, result, contact);
    if (!that.covered.isEmpty()) {
      return that;
    }
    return in(judged.equals("opening") ? "closing" : "opening", result, contact);
  }

  /** In one direction, {@code opening} or {@code closing}, of the judged setting. */
  public static SeenStretches in(String direction, Result result, ContactResult contact) {
    int setting = Math.max(0, result.settings().size() - 1);
    List<Stretch> covered =
        result.recordings().stream()
            .flatMap(r -> r.strokes().stream())
            .filter(s -> s.direction().equals(direction) && s.setting() == setting)
            .map(s -> new Stretch(Math.min(s.from(), s.to()), Math.max(s.from(), s.to())))
            .toList();
    return new SeenStretches(
        direction,
        direction.equals("opening") ? contact.closedOpening() : contact.closedClosing(),
        covered);
  }
}
