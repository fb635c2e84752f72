package tripline.accept;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tripline.assess.ContactSeen;
import tripline.assess.Crossing;
import tripline.assess.Edge;
import tripline.assess.Track;
import tripline.job.Direction;
import tripline.measure.Estimate;
import tripline.measure.Moments;

/**
 * Changes of one contact at one trip point in one direction, stroke by stroke.
 *
 * @param contact the contact
 * @param edge which trip point of its cam
 * @param direction direction of travel
 * @param counted one a full stroke, in order: the first on its way, with the play taken up longest
 * @param aside the others: partial approaches, and further changes of a stroke that turned back
 */
public record TripSeries(
    ContactSeen contact,
    Edge edge,
    Direction direction,
    List<Crossing> counted,
    List<Crossing> aside) {

  public TripSeries {
    counted = List.copyOf(counted);
    aside = List.copyOf(aside);
  }

  static TripSeries of(
      ContactSeen contact, Track track, Direction direction, List<FullStroke> strokes) {
    List<Crossing> aside = new ArrayList<>(track.toward(direction));
    List<Crossing> counted = new ArrayList<>();
    for (FullStroke stroke : strokes) {
      aside.stream().filter(stroke::holds).findFirst().ifPresent(counted::add);
      aside.removeAll(counted);
    }
    return new TripSeries(contact, track.edge(), direction, counted, aside);
  }

  /** The same trip point of the same contact in the other direction, among others. */
  public Optional<TripSeries> back(List<TripSeries> all) {
    return all.stream()
        .filter(s -> s.contact().index() == contact.index())
        .filter(s -> s.edge() == edge && s.direction() != direction)
        .findFirst();
  }

  /** How many strokes count. */
  public int n() {
    return counted.size();
  }

  /** Where it tripped, turns, in order of the strokes. */
  public double[] values() {
    return counted.stream().mapToDouble(c -> c.x().value()).toArray();
  }

  /**
   * Mean and scatter.
   *
   * @throws IllegalArgumentException if no stroke counts
   */
  public Moments moments() {
    return Moments.of(values());
  }

  /** Mean with its parts, own ones averaged, common ones as they are; needs a stroke. */
  public Estimate mean() {
    return Estimate.mean(counted.stream().map(Crossing::x).toList());
  }

  /**
   * Standard deviation that the measurement alone gives these figures, turns: root mean square of
   * the uncertainty of their differences over sqrt 2. What they share cancels in it; what only some
   * of them share, as the registration of one recording, does not.
   */
  public double leastSd() {
    if (n() < 2) {
      return 0;
    }
    double own = 0;
    List<Estimate> shared = new ArrayList<>();
    for (Crossing crossing : counted) {
      own += crossing.x().ownU() * crossing.x().ownU();
      shared.add(crossing.x().commonOnly());
    }
    Estimate centre = Estimate.mean(shared);
    double apart = 0;
    for (Estimate one : shared) {
      double u = one.minus(centre).u();
      apart += u * u;
    }
    return Math.sqrt(own / n() + apart / (n() - 1));
  }
}
