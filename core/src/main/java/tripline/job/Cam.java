package tripline.job;

import java.util.List;

/**
 * A cam and its intended trip points.
 *
 * @param name cam name, unique in the sheet
 * @param trips none (the end's backoff is the target, the cam carries a limit contact), one, or two
 *     (a closed window, lower trip point first as the sheet states them)
 */
public record Cam(String name, List<TripPlan> trips) {
  public Cam {
    trips = List.copyOf(trips);
  }

  /** A closed window with two trip points. */
  public boolean isWindow() {
    return trips.size() == 2;
  }
}
