package tripline.link;

/** The two ways a message travels. */
public enum Encoding {
  /** Binary, SPEC §2. */
  FRAMES,
  /** Text, SPEC §7. */
  LINES
}
