package tripline.reduce;

import java.util.List;

/**
 * An instant whose position is wanted, and what the readings about it were boiled down to.
 *
 * @param timeNs the instant on the position channel's clock, ns
 * @param windows fit windows, the one to use first, then narrower ones to fall back on
 */
record Spot(long timeNs, List<FitWindow> windows) {}
