package tripline.harness.rehearse.valve;

/** Something that moves a valve, or works on it while it stands. */
public sealed interface Mover permits Hand, Motor, Adjuster {
  /** One step of {@value VirtualValve#STEP_NS} ns; false once it is done, nothing having moved. */
  boolean step(VirtualValve valve);

  /** Comes to an end as soon as it can: the hand slows down, the motor coasts. */
  void stop();
}
