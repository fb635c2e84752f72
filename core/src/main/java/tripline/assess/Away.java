package tripline.assess;

import java.util.OptionalDouble;

/**
 * A change of state away from any trip point of the contact.
 *
 * @param recording recording index
 * @param stroke stroke number within the recording; -1 where nothing moved
 * @param timeS when, s from the recording's first stamp
 * @param lengthS how long the state lasted, s; empty where it did not come back
 * @param x where, turns; empty where no position is known
 */
public record Away(
    int recording, int stroke, double timeS, OptionalDouble lengthS, OptionalDouble x) {}
