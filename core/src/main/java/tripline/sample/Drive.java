package tripline.sample;

/** What moved the valve while a recording was made. */
public enum Drive {
  HAND,
  MOTOR
}
