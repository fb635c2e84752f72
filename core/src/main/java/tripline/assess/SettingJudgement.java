package tripline.assess;

import java.util.List;
import tripline.job.End;

/**
 * One setting, judged.
 *
 * @param number setting index
 * @param contacts one a contact, in sheet order
 * @param cams one a trip point, cams in sheet order
 * @param closed the closed end
 * @param open the open end
 * @param exchanges channels that behave as each other's line
 */
public record SettingJudgement(
    int number,
    List<ContactJudgement> contacts,
    List<CamJudgement> cams,
    EndJudgement closed,
    EndJudgement open,
    List<Exchange> exchanges) {

  public SettingJudgement {
    contacts = List.copyOf(contacts);
    cams = List.copyOf(cams);
    exchanges = List.copyOf(exchanges);
  }

  /** The judgement of an end. */
  public EndJudgement end(End end) {
    return end == End.CLOSED ? closed : open;
  }

  /** Contacts of a cam, in sheet order. */
  public List<ContactJudgement> contactsOf(String cam) {
    return contacts.stream().filter(c -> c.contact().cam().equals(cam)).toList();
  }

  /** Whether a cam carries anything that is wired: spares are fitted only. */
  public boolean isWired(CamJudgement cam) {
    return contactsOf(cam.target().cam()).stream().anyMatch(ContactJudgement::isWired);
  }

  /** Trip points of a cam. */
  public List<CamJudgement> camsNamed(String cam) {
    return cams.stream().filter(c -> c.target().cam().equals(cam)).toList();
  }
}
