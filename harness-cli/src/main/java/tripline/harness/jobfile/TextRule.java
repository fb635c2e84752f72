package tripline.harness.jobfile;

import java.util.Optional;

/** What a text of the sheet may look like. */
enum TextRule {
  /** A name: something to see, on one line, short. */
  NAME(1, 64),
  /** Free text on one line. */
  LINE(0, 200);

  private final int shortest;
  private final int longest;

  TextRule(int shortest, int longest) {
    this.shortest = shortest;
    this.longest = longest;
  }

  /** What was expected instead; empty where the text will do. */
  Optional<String> fault(String text) {
    if (text.codePoints().anyMatch(Character::isISOControl)) {
      return Optional.of("a text on one line without control characters");
    }
    if (text.length() > longest) {
      return Optional.of("at most " + longest + " characters");
    }
    if (shortest > 0 && text.isBlank()) {
      return Optional.of("a text that is not blank");
    }
    if (shortest > 0 && !text.equals(text.strip())) {
      return Optional.of("a text without spaces around it");
    }
    return Optional.empty();
  }
}
