package tripline.assess;

/**
 * Two channels that behave as each other's line of the chart.
 *
 * @param first index of the contact earlier in the sheet
 * @param second index of the other
 */
public record Exchange(int first, int second) {}
