package tripline.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tripline.job.Contact;
import tripline.job.Direction;
import tripline.measure.Estimate;

/**
 * What a contact did in one setting, read off the channel that carries it.
 *
 * @param index index of the contact in the sheet
 * @param contact the contact
 * @param observed what its channel did (the channel it is exchanged with, where it is)
 * @param sense its sense against the chart
 * @param tracks its changes, one track a trip point of its cam
 * @param strays settled changes that belong to no trip point
 */
public record ContactSeen(
    int index,
    Contact contact,
    Observed observed,
    Sense sense,
    List<Track> tracks,
    List<Crossing> strays) {

  /** Sense of a contact's changes against the chart. */
  public enum Sense {
    AS_CHARTED,
    OPPOSED,
    /** It never changed at a known place. */
    UNSEEN
  }

  public ContactSeen {
    tracks = List.copyOf(tracks);
    strays = List.copyOf(strays);
  }

  static ContactSeen of(int index, ChartLine line, Observed observed) {
    List<Crossing> crossings = observed.crossings().toList();
    Sense sense = sense(crossings, line);
    boolean turned = sense == Sense.OPPOSED;
    List<Crossing> strays = new ArrayList<>();
    List<Track> tracks = new ArrayList<>();
    List<Crossing> left = new ArrayList<>(crossings);
    for (TripTarget edge : line.edges()) {
      boolean wanted = line.closedAbove(edge.edge()) != turned;
      List<Crossing> mine = left.stream().filter(c -> c.closedAbove() == wanted).toList();
      left.removeIf(c -> c.closedAbove() == wanted);
      tracks.add(Track.nearest(edge.edge(), mine, strays));
    }
    strays.addAll(left);
    return new ContactSeen(index, line.contact(), observed, sense, tracks, strays);
  }

  private static Sense sense(List<Crossing> crossings, ChartLine line) {
    if (crossings.isEmpty()) {
      return Sense.UNSEEN;
    }
    Fit fit = Fit.of(crossings, line);
    return fit.opposed() > fit.sameSense() ? Sense.OPPOSED : Sense.AS_CHARTED;
  }

  /** Its changes at one trip point; empty where its cam has no such point. */
  public Optional<Track> track(Edge edge) {
    return tracks.stream().filter(t -> t.edge() == edge).findFirst();
  }

  /** Pooled place of one trip point in one direction; empty where it was not exercised. */
  public Optional<Estimate> place(Edge edge, Direction direction) {
    return track(edge).flatMap(t -> t.pooled(direction)).map(Pooled::mean);
  }

  /**
   * Whether it was seen to change at every trip point of its cam on the approach that is judged,
   * and a bypass besides while leaving its end, which is when it has to work.
   */
  boolean exercised(List<TripTarget> edges) {
    boolean judged =
        !edges.isEmpty() && edges.stream().allMatch(e -> seen(e.edge(), e.from().approach()));
    return judged
        && switch (contact.role()) {
          case BYPASS_OPENING -> edges.stream().anyMatch(e -> seen(e.edge(), Direction.OPENING));
          case BYPASS_CLOSING -> edges.stream().anyMatch(e -> seen(e.edge(), Direction.CLOSING));
          default -> true;
        };
  }

  private boolean seen(Edge edge, Direction direction) {
    return track(edge).filter(t -> !t.toward(direction).isEmpty()).isPresent();
  }
}
