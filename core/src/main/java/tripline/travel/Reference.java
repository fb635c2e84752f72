package tripline.travel;

import java.util.List;
import java.util.Optional;
import tripline.job.Direction;
import tripline.measure.Estimate;
import tripline.sample.ContactState;

/**
 * What an earlier result of the same actuator brings: its hard stops, and where its contacts
 * changed so that recordings whose position zero was lost can be laid over it. All in reading units
 * of the position channel.
 *
 * @param name what it is called in messages, e.g. a file name
 * @param closedStop the closed hard stop
 * @param openStop the open hard stop
 * @param lostMotion its lost motion, turns: an upper bound like ours, so the smaller one holds
 * @param changes changes in travel of the setting it judged
 */
public record Reference(
    String name,
    Optional<Stop> closedStop,
    Optional<Stop> openStop,
    Optional<Estimate> lostMotion,
    List<Seen> changes) {

  /** A reference that says nothing of lost motion. */
  public Reference(
      String name, Optional<Stop> closedStop, Optional<Stop> openStop, List<Seen> changes) {
    this(name, closedStop, openStop, Optional.empty(), changes);
  }

  public Reference {
    changes = List.copyOf(changes);
  }

  /**
   * A hard stop.
   *
   * @param reading where, reading units
   * @param u standard uncertainty, reading units
   */
  public record Stop(double reading, double u) {}

  /**
   * A contact's change in travel.
   *
   * @param contact name of the contact
   * @param to the new state
   * @param direction direction of travel
   * @param reading where, reading units
   * @param u its standard uncertainty, reading units
   */
  public record Seen(
      String contact, ContactState to, Direction direction, double reading, double u) {}
}
