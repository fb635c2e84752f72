package tripline.job;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import tripline.sample.Channels;

/**
 * A job sheet, whole.
 *
 * @param job identity of the work
 * @param travel what the travel is expected to be
 * @param position the logger's position channel
 * @param settleNs how long a contact state must hold to count as settled, ns, &gt; 0
 * @param closed the closed end's setting
 * @param open the open end's setting
 * @param cams the cams, in sheet order, at least one
 * @param contacts the contacts, in sheet order, at least one
 * @param acceptance how acceptance strokes are judged
 * @param torqueClosing channel of the break contact that opens on closing torque
 * @param torqueOpening channel of the break contact that opens on opening torque
 * @param motorClosing channel of the closing contactor's auxiliary
 * @param motorOpening channel of the opening contactor's auxiliary
 */
public record JobSheet(
    JobIdentity job,
    TravelPlan travel,
    PositionChannel position,
    long settleNs,
    EndSetting closed,
    EndSetting open,
    List<Cam> cams,
    List<Contact> contacts,
    Acceptance acceptance,
    Optional<String> torqueClosing,
    Optional<String> torqueOpening,
    Optional<String> motorClosing,
    Optional<String> motorOpening) {

  public JobSheet {
    cams = List.copyOf(cams);
    contacts = List.copyOf(contacts);
  }

  /** The setting of an end. */
  public EndSetting end(End end) {
    return end == End.CLOSED ? closed : open;
  }

  /** Channels the sheet asks for: contacts in sheet order, then torque, then motor channels. */
  public Channels channels() {
    LinkedHashSet<String> names = new LinkedHashSet<>();
    contacts.forEach(c -> names.add(c.channel()));
    torqueClosing.ifPresent(names::add);
    torqueOpening.ifPresent(names::add);
    motorClosing.ifPresent(names::add);
    motorOpening.ifPresent(names::add);
    return new Channels(List.copyOf(names));
  }

  /** Channel of the torque contact that opens while running toward an end. */
  public Optional<String> torque(End end) {
    return end == End.CLOSED ? torqueClosing : torqueOpening;
  }

  /** Channel of the contactor that drives toward an end. */
  public Optional<String> motor(End end) {
    return end == End.CLOSED ? motorClosing : motorOpening;
  }
}
