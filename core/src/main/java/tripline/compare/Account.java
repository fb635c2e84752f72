package tripline.compare;

import java.util.List;
import java.util.Optional;
import tripline.job.End;
import tripline.measure.Decision;
import tripline.result.Result.CamResult;
import tripline.result.Result.ContactResult;
import tripline.result.Result.EndResult;
import tripline.result.Result.EndsResult;
import tripline.result.Result.TravelResult;

/**
 * What one result says of one setting.
 *
 * @param tag plant tag of the valve
 * @param origin where it comes from
 * @param decision of the whole; empty for an earlier setting, which has none
 * @param travel stops, span, lost motion, sensor
 * @param cams its trip points
 * @param contacts its contacts
 * @param ends both ends
 */
public record Account(
    String tag,
    Origin origin,
    Optional<Decision> decision,
    TravelResult travel,
    List<CamResult> cams,
    List<ContactResult> contacts,
    EndsResult ends) {

  public Account {
    cams = List.copyOf(cams);
    contacts = List.copyOf(contacts);
  }

  /** What it says of an end. */
  public EndResult end(End end) {
    return end == End.CLOSED ? ends.closed() : ends.open();
  }

  /** The contact of a name. */
  public Optional<ContactResult> contact(String name) {
    return contacts.stream().filter(c -> c.contact().equals(name)).findFirst();
  }

  /**
   * Where it comes from.
   *
   * @param sha256 of the result file
   * @param setting number of the setting within it
   * @param jobSha256 of the job sheet
   * @param recordings digests of its recordings, in order
   * @param reference digest of the result that was to bring hard stops
   */
  public record Origin(
      String sha256,
      int setting,
      String jobSha256,
      List<String> recordings,
      Optional<String> reference) {

    public Origin {
      recordings = List.copyOf(recordings);
    }
  }
}
