/**
 * Looking at a recording that still goes on: where the drive is now, what lies ahead of it, and
 * what to do next to set an end of travel.
 *
 * <p>Entry types: {@link tripline.live.LiveReduction} takes the samples, {@link
 * tripline.live.LiveAnswer} explains what has been reduced so far (the same explanation a finished
 * recording gets), {@link tripline.live.Whereabouts} places the latest reading in it, {@link
 * tripline.live.Guide} says what to do next.
 *
 * <p>Threads: one thread feeds a live reduction and asks it for {@link tripline.live.Now} and for
 * copies; everything else is pure functions of immutable records.
 *
 * <p>Memory: 1.1 kB beside the reduction itself, whatever the length of the recording.
 *
 * <p>Failure: what is not known is empty or said to be unknown, never guessed.
 */
@NullMarked
package tripline.live;

import org.jspecify.annotations.NullMarked;
