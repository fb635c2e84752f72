/**
 * Acceptance of one setting over several full strokes: how each trip point repeats (ISO 5725, ISO
 * 230-2), whether one stroke stands out (Grubbs) or the trips move (drift, step), where future
 * trips will fall (ISO 16269-6) against the tolerance, and how many strokes would settle what these
 * leave open.
 *
 * <p>Entry type: {@link tripline.accept.SettingAcceptance}. Pure functions over an {@link
 * tripline.assess.Assessment}; safe from any thread; memory in proportion to strokes times
 * contacts. Nothing here fails on what a recording holds: too few strokes are undecided, with the
 * number that is missing.
 *
 * <p><b>What counts.</b> Full strokes of the judged setting alone, by hand or motor, from whichever
 * recordings: a stroke stands for the next one in service only if the whole gear train ran and
 * every cam was left and met again. A partial approach that is repeated many times would look like
 * repeatability of the actuator and be that of the last half turn. Partial approaches are kept
 * aside, in sight.
 *
 * <p><b>Scatter of the measurement counts once.</b> The standard deviation over strokes holds the
 * cam's scatter and that of the measurement together; the interval is built on it and therefore
 * errs on the wide side. What all strokes have in common (stop, scale, lost motion, registration,
 * and as much of the measurement's own uncertainty as the scatter does not show) is reduced by no
 * number of strokes: it widens the interval on either side by its half-width at the confidence that
 * is asked for, added linearly. With little scatter that keeps the confidence exactly, with much it
 * is kept by the factor, in between it is exceeded.
 */
@NullMarked
package tripline.accept;

import org.jspecify.annotations.NullMarked;
