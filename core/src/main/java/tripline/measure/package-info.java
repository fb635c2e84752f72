/**
 * Figures with their uncertainty, and what may be said from them.
 *
 * <p>Start at {@link tripline.measure.Estimate}: a value and the named parts of its standard
 * uncertainty (JCGM 100). {@link tripline.measure.Conformity} decides such a figure against limits
 * (JCGM 106, ISO 14253-1); {@link tripline.measure.ToleranceInterval} decides several strokes (ISO
 * 16269-6); {@link tripline.measure.Moments}, {@link tripline.measure.LineFit}, {@link
 * tripline.measure.Drift}, {@link tripline.measure.Step}, {@link tripline.measure.Grubbs}, {@link
 * tripline.measure.Repeatability} and {@link tripline.measure.TwoDirections} describe their
 * scatter.
 *
 * <p>Pure functions and immutable records in whatever unit the caller uses: no files, no clock, no
 * state, safe from any thread. Memory: an estimate holds at most {@value
 * tripline.measure.Budget#MOST_RECTANGLES} rectangular parts and one normal part for each name; no
 * function keeps anything it was given.
 *
 * <p>Failure: not-a-number, an infinite figure, or a count too small for the formula is an error of
 * the calling code and throws {@link IllegalArgumentException} at once; nothing here answers NaN,
 * except where a docstring names the case in which a figure does not exist.
 */
@NullMarked
package tripline.measure;

import org.jspecify.annotations.NullMarked;
