package tripline.truth;

import java.util.ArrayList;
import java.util.List;

/**
 * What is wired besides the position contacts; an empty channel is not wired to the logger.
 *
 * @param torqueClosing channel of the break contact that opens on closing torque
 * @param torqueOpening channel of the break contact that opens on opening torque
 * @param motorClosing channel of the closing contactor's auxiliary
 * @param motorOpening channel of the opening contactor's auxiliary
 * @param torqueTripTurns how far beyond a stop the drive winds up until its torque contact opens,
 *     turns
 */
public record Auxiliaries(
    String torqueClosing,
    String torqueOpening,
    String motorClosing,
    String motorOpening,
    double torqueTripTurns) {

  /** Nothing wired; torque contacts exist and open after 0.08 turn of wind-up. */
  public static final Auxiliaries NONE = new Auxiliaries("", "", "", "", 0.08);

  /** Everything wired. */
  public static final Auxiliaries ALL = new Auxiliaries("t1", "t2", "m1", "m2", 0.08);

  /** Wired channels in the order of the job sheet. */
  List<String> channels() {
    List<String> names =
        new ArrayList<>(List.of(torqueClosing, torqueOpening, motorClosing, motorOpening));
    names.removeIf(String::isEmpty);
    return names;
  }
}
