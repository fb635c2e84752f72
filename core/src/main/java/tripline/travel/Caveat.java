package tripline.travel;

/**
 * Something that could not be done.
 *
 * @param recording recording index, or -1 for all
 * @param message what and why, for the reader
 */
public record Caveat(int recording, String message) {}
