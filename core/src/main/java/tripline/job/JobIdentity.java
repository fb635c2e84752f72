package tripline.job;

/**
 * Which valve, which work.
 *
 * @param tag plant tag of the valve, not empty
 * @param description free text, may be empty
 * @param workOrder free text, may be empty
 */
public record JobIdentity(String tag, String description, String workOrder) {}
