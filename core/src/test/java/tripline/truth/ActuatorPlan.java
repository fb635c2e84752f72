package tripline.truth;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import tripline.job.Role;

/**
 * An actuator as built.
 *
 * @param spanTurns travel between the hard stops
 * @param lostMotionTurns play between handwheel and drive
 * @param cams its cams
 * @param contacts its position contacts, in the order of the job sheet
 * @param aux torque contacts and contactors
 */
public record ActuatorPlan(
    double spanTurns,
    double lostMotionTurns,
    List<CamPlan> cams,
    List<ContactPlan> contacts,
    Auxiliaries aux) {

  public ActuatorPlan {
    cams = List.copyOf(cams);
    contacts = List.copyOf(contacts);
  }

  /** Channels in the order of their indexes: contacts, then auxiliaries. */
  public List<String> channels() {
    List<String> names = new ArrayList<>(contacts.stream().map(ContactPlan::channel).toList());
    names.addAll(aux.channels());
    return names;
  }

  public CamPlan cam(String name) {
    return cams.stream().filter(c -> c.name().equals(name)).findFirst().orElseThrow();
  }

  public Optional<ContactPlan> contact(Role role) {
    return contacts.stream().filter(c -> c.role() == role).findFirst();
  }

  /** The same actuator with one cam changed. */
  public ActuatorPlan withCam(String name, UnaryOperator<CamPlan> change) {
    List<CamPlan> other = new ArrayList<>(cams);
    other.replaceAll(c -> c.name().equals(name) ? change.apply(c) : c);
    return new ActuatorPlan(spanTurns, lostMotionTurns, other, contacts, aux);
  }

  /** The same actuator with one contact changed. */
  public ActuatorPlan withContact(String name, UnaryOperator<ContactPlan> change) {
    List<ContactPlan> other = new ArrayList<>(contacts);
    other.replaceAll(c -> c.name().equals(name) ? change.apply(c) : c);
    return new ActuatorPlan(spanTurns, lostMotionTurns, cams, other, aux);
  }

  public ActuatorPlan withLostMotion(double turns) {
    return new ActuatorPlan(spanTurns, turns, cams, contacts, aux);
  }

  public ActuatorPlan withAuxiliaries(Auxiliaries other) {
    return new ActuatorPlan(spanTurns, lostMotionTurns, cams, contacts, other);
  }
}
