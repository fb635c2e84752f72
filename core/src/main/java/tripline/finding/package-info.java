/**
 * What is wrong or worth knowing: one small class a code, all looking at the same evidence.
 *
 * <p>Entry type: {@link tripline.finding.Findings}. One cause is one finding: each class says only
 * what it sees, and {@link tripline.finding.Explanations} drops what another finding already
 * explains, by a table with its reasons. A caution or a fault is raised only where the evidence
 * exceeds its uncertainty. Pure functions; safe from any thread.
 *
 * <p>Codes beyond those of the result's contract: {@code contact-off-cam}, {@code
 * limit-after-torque}, {@code motor-reversed}, {@code recording-apart}, {@code time-repeated}.
 */
@NullMarked
package tripline.finding;

import org.jspecify.annotations.NullMarked;
