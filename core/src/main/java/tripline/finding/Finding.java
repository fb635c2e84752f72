package tripline.finding;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/**
 * Something wrong or worth knowing.
 *
 * @param code what kind
 * @param severity how much it weighs
 * @param contacts names of the contacts it is about; none where it is about a cam, an end or the
 *     recording
 * @param cams names of the cams it is about, those of its contacts included
 * @param recording recording index, where it belongs to one
 * @param stroke stroke number within the recording, where it belongs to one
 * @param timeS s from the recording's first stamp, where it has a time
 * @param message one plain sentence with figures and units
 * @param evidence figures (turns, s, counts as their names say) and texts the message rests on
 * @param action what to do, in the trade's words
 */
public record Finding(
    Code code,
    Severity severity,
    Set<String> contacts,
    Set<String> cams,
    OptionalInt recording,
    OptionalInt stroke,
    OptionalDouble timeS,
    String message,
    Map<String, Object> evidence,
    String action) {

  public Finding {
    contacts = Collections.unmodifiableSet(new LinkedHashSet<>(contacts));
    cams = Collections.unmodifiableSet(new LinkedHashSet<>(cams));
    evidence = Collections.unmodifiableMap(new LinkedHashMap<>(evidence));
  }

  /** The contact, where it is about one. */
  public Optional<String> contact() {
    return contacts.stream().findFirst();
  }

  /** The cam, where it is about one. */
  public Optional<String> cam() {
    return cams.stream().findFirst();
  }

  /** A figure of the evidence; empty where there is none of that name. */
  public OptionalDouble figure(String name) {
    Object value = evidence.get(name);
    return value instanceof Number number
        ? OptionalDouble.of(number.doubleValue())
        : OptionalDouble.empty();
  }

  /** The same at another severity. */
  Finding at(Severity other) {
    return new Finding(
        code, other, contacts, cams, recording, stroke, timeS, message, evidence, action);
  }
}
