package tripline.finding;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import tripline.assess.Assessment;
import tripline.develop.Development;
import tripline.develop.Trip;
import tripline.job.Contact;
import tripline.sample.Mark;

/**
 * {@code contact-moved-at-rest}: changed while the drive stood still. One finding for a cam and a
 * setting, since an adjuster turned to and fro moves every contact of its cam several times.
 */
final class ContactMovedAtRest implements Look {
  private record Group(int recording, String cam, int setting) {}

  @Override
  public void look(Assessment assessment, FindingSink sink) {
    Development development = assessment.development();
    List<Contact> contacts = assessment.sheet().contacts();
    Map<Group, List<Trip>> groups =
        development.trips().stream()
            .filter(t -> t.atRest() && t.channel() < contacts.size())
            .collect(
                Collectors.groupingBy(
                    t -> new Group(t.recording(), contacts.get(t.channel()).cam(), t.setting()),
                    LinkedHashMap::new,
                    Collectors.toList()));
    groups.forEach((group, trips) -> sink.onFinding(finding(development, group, trips)));
  }

  private static Finding finding(Development development, Group group, List<Trip> trips) {
    List<Contact> moved =
        trips.stream()
            .map(Trip::channel)
            .distinct()
            .map(channel -> development.sheet().contacts().get(channel))
            .toList();
    boolean marked =
        development.recordings().get(group.recording()).trace().marks().stream()
            .anyMatch(m -> m.mark() == Mark.ADJUSTED);
    Draft draft = Draft.of(Code.CONTACT_MOVED_AT_REST).trip(trips.get(0));
    moved.forEach(draft::contact);
    return draft
        .evidence("changes", trips.size())
        .evidence("marked", marked ? "adjusted" : "no mark")
        .says(
            String.format(
                "%s of cam %s changed %s while the drive stood still, %s: %s.",
                moved.size() == 1
                    ? Text.capital(Text.contact(moved.get(0)))
                    : "Contacts " + Text.names(moved),
                group.cam(),
                Text.times(trips.size()),
                Text.when(group.recording(), trips.get(0).timeS()),
                marked
                    ? "the adjustment that was marked"
                    : "an adjuster was turned, or a wire is loose"),
            marked
                ? "Strokes before and after it are judged apart; nothing else to do."
                : "If nobody turned an adjuster then, look for a loose wire or a cam that slips;"
                    + " strokes before and after are judged apart.");
  }
}
