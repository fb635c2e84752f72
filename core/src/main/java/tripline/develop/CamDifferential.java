package tripline.develop;

import tripline.measure.Estimate;

/**
 * How much later a cam changes its contacts on the way back, beyond the lost motion common to all
 * cams.
 *
 * @param cam cam name
 * @param edge 0 for the cam's one trip point or the lower one of a closed window, 1 for the upper
 * @param own its own differential, turns; the cam with the least counts as having none
 */
public record CamDifferential(String cam, int edge, Estimate own) {}
