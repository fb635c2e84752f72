package tripline.finding;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import tripline.assess.Amounts;
import tripline.assess.Assessment;
import tripline.assess.Overlap;
import tripline.job.Contact;

/**
 * {@code contacts-overlap}: opposite contacts of one cam closed together for certain; one finding a
 * cam, since one late block meets several others.
 */
final class ContactsOverlap implements Look {
  @Override
  public void look(Assessment assessment, FindingSink sink) {
    assessment.judged().contacts().stream()
        .flatMap(c -> c.overlaps().stream())
        .distinct()
        .collect(
            Collectors.groupingBy(
                o -> o.broke().contact().cam(), LinkedHashMap::new, Collectors.toList()))
        .values()
        .forEach(overlaps -> sink.onFinding(finding(overlaps)));
  }

  private static Finding finding(List<Overlap> overlaps) {
    Overlap worst =
        overlaps.stream().reduce((a, b) -> b.leastS() > a.leastS() ? b : a).orElseThrow();
    Contact broke = worst.broke().contact();
    Contact made = worst.made().contact();
    long strokes = overlaps.stream().map(Overlap::stroke).distinct().count();
    return Draft.of(Code.CONTACTS_OVERLAP)
        .contact(broke)
        .contact(made)
        .trip(worst.crossing().trip())
        .evidence("least_s", worst.leastS())
        .evidence("least_turns", worst.leastTurns())
        .evidence("strokes", strokes)
        .says(
            String.format(
                Locale.ROOT,
                "Contacts %s and %s of cam %s were closed together for at least %s (%.3f turn) while"
                    + " %s; such overlaps came in %s.",
                broke.name(),
                made.name(),
                broke.cam(),
                Amounts.seconds(worst.leastS()),
                worst.leastTurns(),
                worst.stroke().direction().word(),
                strokes == 1 ? "one stroke" : strokes + " strokes"),
            "The cam must break before it makes: check the contact blocks' seat, and replace the one"
                + " that opens late or closes early.");
  }
}
