package tripline.develop;

import java.util.Optional;
import tripline.job.Seat;
import tripline.reduce.Change;
import tripline.reduce.Stopping;
import tripline.travel.Passage;
import tripline.travel.StopEvents;

/**
 * What stopped a motor stroke, from the order of events: right or unknown, never a guess.
 *
 * <p>A contact that opens takes the motor's power away through its contactor, which falls out some
 * 10 to 60 ms later, and deceleration begins then (common practice); so an event caused by a
 * contact follows it within {@value #DROP_OUT_NS} ns, and deceleration that began before the
 * contact changed was not caused by it.
 */
final class StopCause {
  private static final long DROP_OUT_NS = 250_000_000L;

  /** Load ripple blurs the onset of deceleration by at least this, standard uncertainty, ns. */
  private static final double RIPPLE_NS = 20e6;

  /** Standard uncertainties within which an order of events counts as open. */
  private static final double DOUBT = 2;

  private final Span onset;
  private final Optional<Span> limit;
  private final Optional<Span> torque;
  private final Optional<Span> motor;
  private final boolean torqueRead;
  private final boolean motorRead;
  private final boolean limitRead;
  private final Seat seat;

  /** An interval of time in which something happened, ns; the whole of time where unknown. */
  private record Span(long fromNs, long toNs) {
    static final Span EVER = new Span(Long.MIN_VALUE, Long.MAX_VALUE);

    boolean isKnown() {
      return !equals(EVER);
    }

    boolean isBefore(Span other) {
      return toNs < other.fromNs;
    }

    /** Certainly happened longer after another than any drop-out takes. */
    boolean isLongAfter(Span other) {
      return fromNs > other.toNs + DROP_OUT_NS;
    }

    /** May have been caused by what happened in another interval. */
    boolean mayFollow(Span cause) {
      return toNs >= cause.fromNs && fromNs <= cause.toNs + DROP_OUT_NS;
    }
  }

  /** Which channels the recording has; an absent one leaves its question open. */
  record Read(boolean limit, boolean torque, boolean motor) {}

  /**
   * @param skewNs position stamp minus contact stamp
   * @param skewUNs its standard uncertainty
   */
  StopCause(StopEvents events, Read read, Seat seat, long skewNs, long skewUNs) {
    onset = onset(events.stopping(), skewNs, skewUNs);
    limit = events.limit().map(StopCause::bracket);
    torque = events.torque().map(StopCause::bracket);
    motor = events.motor().map(StopCause::bracket);
    limitRead = read.limit();
    torqueRead = read.torque();
    motorRead = read.motor();
    this.seat = seat;
  }

  /** When it happened, whatever its input's filter took: inputs differ in that. */
  private static Span bracket(Passage passage) {
    Change change = passage.change();
    return new Span(change.happenedAfterNs(), change.happenedByNs());
  }

  private static Span onset(Stopping stopping, long skewNs, long skewUNs) {
    if (!stopping.hasOnset()) {
      return Span.EVER;
    }
    long atNs = stopping.onsetNs() - skewNs;
    double onsetU = Math.max(RIPPLE_NS, (double) stopping.onsetUNs());
    long doubtNs = Math.round(DOUBT * Math.hypot(onsetU, (double) skewUNs));
    return new Span(atNs - doubtNs, atNs + doubtNs);
  }

  /** What stopped it, as far as its contacts tell. */
  Stroke.StoppedBy stoppedBy() {
    if (torque.isPresent()) {
      return limit.isEmpty() ? Stroke.StoppedBy.TORQUE : limitOrTorque(limit.get(), torque.get());
    }
    if (limit.isPresent()) {
      boolean seatedUnseen = seat == Seat.TORQUE && !torqueRead;
      if (!seatedUnseen && causedBy(limit.get())) {
        return Stroke.StoppedBy.LIMIT;
      }
      return notBy(limit.get()) && torqueRead && !isPowerLost()
          ? Stroke.StoppedBy.OPERATOR
          : Stroke.StoppedBy.UNKNOWN;
    }
    return limitRead && torqueRead && !isPowerLost()
        ? Stroke.StoppedBy.OPERATOR
        : Stroke.StoppedBy.UNKNOWN;
  }

  /** Both opened: the one that opened first, unless the motor ran on all the same. */
  private Stroke.StoppedBy limitOrTorque(Span limit, Span torque) {
    if (torque.isBefore(limit)) {
      return Stroke.StoppedBy.TORQUE;
    }
    if (!limit.isBefore(torque)) {
      return Stroke.StoppedBy.UNKNOWN;
    }
    if (seat == Seat.TORQUE) {
      return Stroke.StoppedBy.TORQUE;
    }
    if (motor.isPresent()) {
      boolean fellOutForLimit = motor.get().isBefore(torque) || motor.get().mayFollow(limit);
      return fellOutForLimit ? Stroke.StoppedBy.LIMIT : Stroke.StoppedBy.TORQUE;
    }
    boolean soonAfter = onset.isKnown() ? onset.mayFollow(limit) : torque.mayFollow(limit);
    return soonAfter ? Stroke.StoppedBy.LIMIT : Stroke.StoppedBy.TORQUE;
  }

  /**
   * The contactor fell out, or else deceleration began, just after the contact opened. The
   * contactor tells better than the onset of a gentle deceleration, unless that lies far before.
   */
  private boolean causedBy(Span contact) {
    if (motor.isPresent()) {
      boolean diedBefore = onset.isKnown() && contact.isLongAfter(onset);
      return !diedBefore && !motor.get().isBefore(contact) && motor.get().mayFollow(contact);
    }
    if (!onset.isKnown() || onset.isBefore(contact)) {
      return false;
    }
    long middleNs = onset.fromNs + (onset.toNs - onset.fromNs) / 2;
    boolean orderTold = torqueRead || middleNs >= contact.fromNs;
    return orderTold && onset.mayFollow(contact);
  }

  /** The contactor, or else deceleration, was gone before the contact opened, or long after. */
  private boolean notBy(Span contact) {
    Span lost = motor.orElse(onset);
    return lost.isKnown() && (lost.isBefore(contact) || !lost.mayFollow(contact));
  }

  /**
   * Power failed: the motion died away while the contactor stayed in, or before it fell out.
   * Without a contactor auxiliary this cannot be told from an operator's stop.
   */
  boolean isPowerLost() {
    boolean noContact = limit.isEmpty() && torque.isEmpty();
    boolean bothRead = limitRead && torqueRead;
    if (!noContact || !bothRead || !motorRead || !onset.isKnown()) {
      return false;
    }
    return motor.isEmpty() || onset.isBefore(motor.get());
  }
}
