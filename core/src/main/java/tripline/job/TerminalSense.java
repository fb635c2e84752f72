package tripline.job;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Contact names that look like terminal marks of EN 50013: two digits a terminal, the first the
 * sequence number, the second the function: 1-2 break, 3-4 make, 1-2-4 change-over, 5-6 and 7-8 the
 * same with special function (from memory of EN 50013:1977). Names of another shape are left alone.
 */
final class TerminalSense {
  private static final Pattern MARKS = Pattern.compile("(\\d)(\\d)-(\\d)(\\d)");

  private TerminalSense() {}

  /** What a pair of function digits stands for. */
  enum Function {
    BREAK,
    MAKE
  }

  static void check(JobSheet sheet, Remarks remarks) {
    Map<String, Integer> breaks = new HashMap<>();
    for (int i = 0; i < sheet.contacts().size(); i++) {
      Contact contact = sheet.contacts().get(i);
      Matcher marks = MARKS.matcher(contact.name());
      if (!marks.matches()) {
        continue;
      }
      Optional<Function> function = function(marks);
      if (function.isEmpty()) {
        remarks.doubt(
            Remarks.contact(i, "name"),
            "%s looks like terminal marks and is none of EN 50013, which has one sequence"
                    .formatted(contact.name())
                + " digit, then 1-2 for a break contact or 3-4 for a make contact");
      } else if (function.get() == Function.BREAK) {
        breaks.put(marks.group(1) + contact.cam(), i);
      }
    }
    for (int i = 0; i < sheet.contacts().size(); i++) {
      Contact make = sheet.contacts().get(i);
      Matcher marks = MARKS.matcher(make.name());
      if (!marks.matches() || function(marks).filter(Function.MAKE::equals).isEmpty()) {
        continue;
      }
      Integer index = breaks.get(marks.group(1) + make.cam());
      if (index != null && sheet.contacts().get(index).closed() == make.closed()) {
        remarks.doubt(
            Remarks.contact(i, "closed"),
            "%s and %s are a break and a make contact of one switch by their marks, and both are"
                    .formatted(sheet.contacts().get(index).name(), make.name())
                + " charted %s".formatted(make.closed().word()),
            Remarks.contact(index, "closed"));
      }
    }
  }

  private static Optional<Function> function(Matcher marks) {
    if (!marks.group(1).equals(marks.group(3))) {
      return Optional.empty();
    }
    return switch (marks.group(2) + marks.group(4)) {
      case "12", "56" -> Optional.of(Function.BREAK);
      case "34", "14", "78" -> Optional.of(Function.MAKE);
      default -> Optional.empty();
    };
  }
}
