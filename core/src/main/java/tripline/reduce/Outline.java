package tripline.reduce;

/**
 * The path of the readings, thinned to a bounded number of points for drawing.
 *
 * @param timeNs times, ns, rising
 * @param reading mean reading about each time
 */
public record Outline(long[] timeNs, double[] reading) {}
