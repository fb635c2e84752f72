package tripline.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import tripline.develop.Development;
import tripline.develop.Trip;
import tripline.job.Contact;
import tripline.reduce.Movement;
import tripline.reduce.ReadingFault;
import tripline.reduce.Trace;

/**
 * Whether the position readings can be relied on. After a jump nobody knows where the valve is, and
 * a reading that stood still while it moved has no place for what changed: nothing that is measured
 * in travel is decided then.
 *
 * @param frozen stretches in which the reading stood still while the valve moved
 * @param slips jumps of the reading that end no such stretch
 */
public record ReadingTrust(List<Frozen> frozen, List<Slip> slips) {
  /** A rest ends at a jump if nothing lies between, ns. */
  private static final long ADJOINING_NS = 500_000_000;

  /** An adjuster is turned where the valve stands: the trip points it moves are near, turns. */
  private static final double NEAR_TURNS = 1;

  public ReadingTrust {
    frozen = List.copyOf(frozen);
    slips = List.copyOf(slips);
  }

  /**
   * The reading stood still while contacts changed that one adjuster cannot have moved.
   *
   * @param recording recording index
   * @param fromS begin, s from the recording's first stamp
   * @param toS end, s
   * @param changes settled changes in between
   */
  public record Frozen(int recording, double fromS, double toS, int changes) {}

  /**
   * The reading jumped.
   *
   * @param recording recording index
   * @param atS when, s from the recording's first stamp
   * @param turns by how much, turns, signed as x
   */
  public record Slip(int recording, double atS, double turns) {}

  /** Whether figures measured in travel may be decided. */
  public boolean holds() {
    return frozen.isEmpty() && slips.isEmpty();
  }

  static ReadingTrust of(Development development, List<TripTarget> targets) {
    List<Frozen> frozen = new ArrayList<>();
    List<Slip> slips = new ArrayList<>();
    double scale = development.sheet().position().turnsPerUnit();
    for (int r = 0; r < development.recordings().size(); r++) {
      Trace trace = development.recordings().get(r).trace();
      List<ReadingFault> jumps =
          trace.faults().stream().filter(f -> f.kind() == ReadingFault.Kind.SLIP).toList();
      List<Movement.Rest> still = new ArrayList<>();
      for (Movement movement : trace.movements()) {
        if (movement instanceof Movement.Rest rest && moved(development, targets, r, rest, jumps)) {
          still.add(rest);
          frozen.add(frozen(development, r, rest));
        }
      }
      for (ReadingFault jump : jumps) {
        if (still.stream().noneMatch(rest -> adjoins(rest, jump))) {
          slips.add(new Slip(r, seconds(trace, jump.fromNs()), jump.amount() * scale));
        }
      }
      for (ReadingFault fault : trace.faults()) {
        if (fault.kind() == ReadingFault.Kind.FROZEN) {
          frozen.add(
              new Frozen(r, seconds(trace, fault.fromNs()), seconds(trace, fault.toNs()), 0));
        }
      }
    }
    return new ReadingTrust(frozen, slips);
  }

  /** Contacts changed, and either the reading made up for it at once or two cams far apart did. */
  private static boolean moved(
      Development development,
      List<TripTarget> targets,
      int recording,
      Movement.Rest rest,
      List<ReadingFault> jumps) {
    List<Trip> changes = changes(development, recording, rest);
    List<Trip> atRest = changes.stream().filter(Trip::atRest).toList();
    boolean madeUp = jumps.stream().anyMatch(jump -> adjoins(rest, jump));
    return (madeUp && !changes.isEmpty()) || farApart(development, targets, atRest);
  }

  private static boolean farApart(
      Development development, List<TripTarget> targets, List<Trip> changes) {
    Set<String> cams = new TreeSet<>();
    List<Contact> contacts = development.sheet().contacts();
    changes.forEach(t -> cams.add(contacts.get(t.channel()).cam()));
    double[] places =
        targets.stream()
            .filter(t -> cams.contains(t.cam()))
            .flatMapToDouble(t -> t.nominalX().stream())
            .sorted()
            .toArray();
    return cams.size() > 1 && places[places.length - 1] - places[0] > NEAR_TURNS;
  }

  private static List<Trip> changes(Development development, int recording, Movement.Rest rest) {
    Trace trace = development.recordings().get(recording).trace();
    int contacts = development.sheet().contacts().size();
    return development.trips().stream()
        .filter(t -> t.recording() == recording && t.channel() < contacts)
        .filter(
            t -> {
              long atNs = trace.firstNs() + Math.round(t.timeS() * 1e9);
              return atNs >= rest.fromNs() && atNs <= rest.toNs();
            })
        .toList();
  }

  private static Frozen frozen(Development development, int recording, Movement.Rest rest) {
    Trace trace = development.recordings().get(recording).trace();
    return new Frozen(
        recording,
        seconds(trace, rest.fromNs()),
        seconds(trace, rest.toNs()),
        changes(development, recording, rest).size());
  }

  private static boolean adjoins(Movement.Rest rest, ReadingFault jump) {
    return Math.abs(jump.toNs() - rest.toNs()) <= ADJOINING_NS;
  }

  private static double seconds(Trace trace, long timeNs) {
    return (timeNs - trace.firstNs()) * 1e-9;
  }
}
