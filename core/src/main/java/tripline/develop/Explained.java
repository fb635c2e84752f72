package tripline.develop;

import tripline.travel.TravelMap;

/**
 * Recordings explained: what was seen, and the map that further readings can be turned into travel
 * with.
 *
 * @param map readings to travel
 * @param development what was seen, as built
 */
public record Explained(TravelMap map, Development development) {}
