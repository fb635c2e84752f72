package tripline.job;

import java.util.Optional;

/** What a contact is for. */
public enum Role {
  LIMIT_CLOSING("limit-closing"),
  LIMIT_OPENING("limit-opening"),
  BYPASS_OPENING("bypass-opening"),
  BYPASS_CLOSING("bypass-closing"),
  LAMP_OPEN("lamp-open"),
  LAMP_CLOSED("lamp-closed"),
  INTERLOCK("interlock"),
  SPARE("spare");

  private final String word;

  Role(String word) {
    this.word = word;
  }

  /** As the job sheet writes it. */
  public String word() {
    return word;
  }

  /** The end whose stop a limit contact makes; empty for the other roles. */
  public Optional<End> limitOf() {
    return switch (this) {
      case LIMIT_CLOSING -> Optional.of(End.CLOSED);
      case LIMIT_OPENING -> Optional.of(End.OPEN);
      default -> Optional.empty();
    };
  }
}
