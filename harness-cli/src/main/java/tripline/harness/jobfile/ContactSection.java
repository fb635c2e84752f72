package tripline.harness.jobfile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tripline.job.ClosedWhere;
import tripline.job.Contact;
import tripline.job.Role;

/** {@code [[contact]]}. */
final class ContactSection {
  private static final Map<String, ClosedWhere> CLOSED =
      words(ClosedWhere.values(), ClosedWhere::word);
  private static final Map<String, Role> ROLES = words(Role.values(), Role::word);
  private static final Range COVERS = Range.above(0, 100, "per cent of span");

  private ContactSection() {}

  static List<Contact> all(List<Section> sections, Notes notes) {
    List<Contact> contacts = new ArrayList<>();
    for (int i = 0; i < sections.size(); i++) {
      Section contact = sections.get(i);
      contact.require("name", "the contact's terminal marks");
      contact.require("channel", "the channel that reads the contact");
      contact.require("cam", "the name of the contact's cam");
      contact.require("closed", Words.oneOf(CLOSED.keySet()));
      contact.require("role", Words.oneOf(ROLES.keySet()));
      contacts.add(
          new Contact(
              contact.text("name", TextRule.NAME).orElse("unnamed contact " + (i + 1)),
              contact.text("channel", TextRule.NAME).orElse("unnamed channel " + (i + 1)),
              contact.text("cam", TextRule.NAME).orElse(""),
              contact.choice("closed", CLOSED).orElse(ClosedWhere.OPEN_SIDE),
              contact.choice("role", ROLES).orElse(Role.SPARE),
              contact.number("covers", COVERS)));
      contact.close();
    }
    return contacts;
  }

  private static <T> Map<String, T> words(T[] values, Function<T, String> word) {
    return Stream.of(values)
        .collect(Collectors.toMap(word, v -> v, (a, b) -> a, LinkedHashMap::new));
  }
}
