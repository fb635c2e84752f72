package tripline.job;

/** Which side of the lost motion the position sensor sits on. */
public enum SensorSide {
  HANDWHEEL,
  DRIVE
}
