package tripline.accept;

import java.util.ArrayList;
import java.util.List;
import tripline.assess.Crossing;
import tripline.develop.Development;
import tripline.develop.Stroke;
import tripline.job.Direction;

/**
 * Travel from one end region to the other. By hand it may be made of several strokes: short turns
 * back on the way, to change grip, do not break it.
 *
 * @param direction which way
 * @param parts strokes in order, turns back among them
 */
record FullStroke(Direction direction, List<Stroke> parts) {
  /** Who turns back further has begun another stroke (chosen by the authors), turns. */
  static final double MOST_TURNED_BACK = 1;

  FullStroke {
    parts = List.copyOf(parts);
  }

  /** Full strokes of one setting, in order. */
  static List<FullStroke> of(Development development, int setting) {
    List<Stroke> strokes =
        development.strokes().stream().filter(s -> s.setting() == setting).toList();
    List<FullStroke> full = new ArrayList<>();
    int at = 0;
    while (at < strokes.size()) {
      int end = begins(strokes.get(at)) ? end(strokes, at) : -1;
      if (end >= 0) {
        full.add(new FullStroke(strokes.get(at).direction(), strokes.subList(at, end + 1)));
      }
      at = Math.max(at, end) + 1;
    }
    return full;
  }

  private static boolean begins(Stroke stroke) {
    return stroke.full() || stroke.extent() == Stroke.Extent.FROM_END;
  }

  /**
   * Index of the last part of a full stroke that begins here; -1 where it never arrives. Who turns
   * back within the end region and goes on is still at it: the limit contact may change only then.
   */
  private static int end(List<Stroke> strokes, int begin) {
    int arrived = strokes.get(begin).full() ? begin : -1;
    for (int at = begin; at + 2 < strokes.size(); at += 2) {
      Stroke back = strokes.get(at + 1);
      Stroke on = strokes.get(at + 2);
      if (!turnsBack(strokes.get(at), back) || !turns(back, on) || on.full()) {
        break;
      }
      arrived = on.extent() == Stroke.Extent.TO_END ? at + 2 : arrived;
    }
    return arrived;
  }

  private static boolean turnsBack(Stroke stroke, Stroke back) {
    return turns(stroke, back)
        && !back.full()
        && Math.abs(back.to() - back.from()) <= MOST_TURNED_BACK;
  }

  private static boolean turns(Stroke stroke, Stroke next) {
    return next.recording() == stroke.recording() && next.direction() != stroke.direction();
  }

  /** Whether a change belongs to this stroke and its direction. */
  boolean holds(Crossing crossing) {
    return crossing.direction() == direction && parts.contains(crossing.stroke());
  }
}
