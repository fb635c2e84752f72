/**
 * Two results of one valve: as found and as left, old actuator and new, last year and this.
 *
 * <p>Start at {@link tripline.compare.Comparison}. An {@link tripline.compare.Account} is what a
 * result says of one setting; {@link tripline.compare.Movement} is one figure in both, and the
 * uncertainty of its difference. <b>Which errors cancel</b> in that difference (JCGM 100 5.2.2,
 * correlation 1) and which do not:
 *
 * <ul>
 *   <li><em>Fit, time bracket, stamp resolution, bounce, missing readings, scatter</em>: each
 *       change's own. Never.
 *   <li><em>A hard stop</em> found anew is felt anew, with an error of its own. It cancels between
 *       settings of one result, which share one stop, and between results of which one brought it
 *       from the other, or both from the same third ({@code reference} in the result file, by
 *       digest).
 *   <li><em>Scale</em> (turns per unit of reading): one error of the sensor and its gearing, in
 *       proportion to x. With the same sensor statement in both results it cancels but for what the
 *       two places differ; a figure that did not move has none.
 *   <li><em>Skew</em> between the clocks of position and contacts: a logger's constant as long as
 *       it runs, and nobody knows that it stays through the next set-up. Within one result only.
 *   <li><em>Lost motion</em>, measured or assumed: measured anew, and it may have worn. Within one
 *       result only. It is known as a bound, with the differentials of whichever cams could not be
 *       told from the smallest that day: its movement, and with it that of the span, is found cam
 *       by cam, where the differentials cancel ({@code LostMotionMove}).
 *   <li><em>Registration</em> of recordings that lost their zero: within one result only. Laid over
 *       the other result by its contact changes, the cams agree by construction: then only
 *       movements between cams are known, whatever the intervals of x say.
 *   <li>Two results from the same recordings share every error.
 * </ul>
 *
 * <p>What is left is mostly the stops, felt to a hundredth of a turn, in all trip points alike.
 * Between cams of one result they cancel, so a cam is also compared with those that stayed together
 * ({@code Fellows}), which shows movements several times smaller.
 *
 * <p>"Moved" is said so that a pair of results in which nothing moved shows a movement once in
 * twenty, however many trip points it has ({@link tripline.compare.Family}). Parts are taken as
 * known, without degrees of freedom. How far a cam scatters from stroke to stroke is in the figures
 * as far as their strokes showed it: one stroke shows none.
 *
 * <p>Pure functions and immutable records; any thread; memory in proportion to the two results.
 * Failure: accounts that cannot be compared have a reason ({@link
 * tripline.compare.Comparison#refusal}); what is not known in both stays not known, never 0.
 */
@NullMarked
package tripline.compare;

import org.jspecify.annotations.NullMarked;
