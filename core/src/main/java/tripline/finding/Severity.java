package tripline.finding;

import java.util.Locale;

/** How much a finding weighs, worst first. */
public enum Severity {
  /** Rejects the whole. */
  FAULT,
  CAUTION,
  NOTE;

  /** As the result writes it. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
