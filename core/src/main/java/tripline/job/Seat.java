package tripline.job;

/** What is meant to stop the motor at an end. */
public enum Seat {
  LIMIT,
  TORQUE
}
