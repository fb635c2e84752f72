package tripline.compare;

/**
 * What a reader should know before he believes a comparison.
 *
 * @param code which
 * @param message a sentence or two
 */
public record Note(Code code, String message) {
  /** What a note is about. */
  public enum Code {
    SAME_RESULT("same-result"),
    SAME_RECORDINGS("same-recordings"),
    OTHER_ORIGIN("other-origin"),
    REGISTERED("registered"),
    TOGETHER("together"),
    NOBODY_STAYED("nobody-stayed"),
    TURNED("turned"),
    SPAN_CHANGED("span-changed"),
    SHEET_CHANGED("sheet-changed");

    private final String word;

    Code(String word) {
      this.word = word;
    }

    /** As the answer writes it. */
    public String word() {
      return word;
    }
  }
}
