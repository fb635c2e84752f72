package tripline.reduce;

import tripline.sample.Mark;

/**
 * An operator's mark and the reading there.
 *
 * @param timeNs time, ns
 * @param mark its kind
 * @param text as written
 * @param place position at the mark
 */
public record MarkPoint(long timeNs, Mark mark, String text, Place place) {}
