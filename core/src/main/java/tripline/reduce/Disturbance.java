package tripline.reduce;

/**
 * A burst of edges that ended in the state it began in.
 *
 * @param channel contact channel index
 * @param fromNs first edge, ns
 * @param toNs last edge, ns
 * @param edges how many
 * @param place position at the first edge
 */
public record Disturbance(int channel, long fromNs, long toNs, int edges, Place place) {}
