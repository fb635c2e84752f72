package tripline.assess;

import java.util.Optional;

/** Which trip point of a cam; a closed window has two. */
public enum Edge {
  ONLY,
  LOWER,
  UPPER;

  /** As the result writes it; empty for a cam with one trip point. */
  public Optional<String> word() {
    return this == ONLY ? Optional.empty() : Optional.of(name().toLowerCase(java.util.Locale.ROOT));
  }
}
