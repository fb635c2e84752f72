package tripline.finding;

import java.util.Locale;

/**
 * Finding codes and the severity they carry unless the contact is a spare. The order is that of
 * print within one severity: what moves the valve first, what the recording lacks last.
 */
public enum Code {
  STOPPED_ON_TORQUE(Severity.FAULT),
  COAST_REACHES_STOP(Severity.FAULT),
  LIMIT_AFTER_TORQUE(Severity.FAULT),
  MOTOR_REVERSED(Severity.FAULT),
  CAM_SILENT(Severity.FAULT),
  CAM_EARLY(Severity.FAULT),
  CAM_LATE(Severity.FAULT),
  CONTACTS_EXCHANGED(Severity.FAULT),
  CONTACT_INVERTED(Severity.FAULT),
  CONTACT_STUCK_OPEN(Severity.FAULT),
  CONTACT_STUCK_CLOSED(Severity.FAULT),
  CONTACT_OFF_CAM(Severity.FAULT),
  CONTACTS_OVERLAP(Severity.FAULT),
  CONTACT_INTERMITTENT(Severity.FAULT),
  TRIP_DRIFT(Severity.FAULT),
  LAMPS_DARK(Severity.FAULT),
  LAMPS_WRONG(Severity.FAULT),
  BYPASS_SHORT(Severity.FAULT),
  TRIP_SCATTER(Severity.CAUTION),
  CONTACT_CHATTER(Severity.CAUTION),
  CONTACT_MOVED_AT_REST(Severity.CAUTION),
  DIFFERENTIAL_LARGE(Severity.CAUTION),
  LOST_MOTION_LARGE(Severity.CAUTION),
  STROKE_TIME_OFF(Severity.CAUTION),
  SPAN_OFF(Severity.CAUTION),
  RECORDING_APART(Severity.CAUTION),
  POSITION_SLIP(Severity.CAUTION),
  POSITION_FROZEN(Severity.CAUTION),
  POSITION_GAP(Severity.CAUTION),
  SAMPLES_LOST(Severity.CAUTION),
  TIME_BACKWARDS(Severity.CAUTION),
  TIME_REPEATED(Severity.CAUTION),
  STOP_UNKNOWN(Severity.NOTE);

  private final Severity severity;

  Code(Severity severity) {
    this.severity = severity;
  }

  /** Its usual severity. */
  public Severity severity() {
    return severity;
  }

  /** As the result writes it. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
