/**
 * Drawings of a result as inline SVG: handwheel dials, the development, travel over time, trip
 * points over strokes.
 *
 * <p>Entry: {@link tripline.harness.report.drawing.Drawings}. Every drawing is 360 units wide, so
 * that it reads on a phone as it is and stands two abreast on paper; what was intended is grey,
 * what was measured is in the one accent and has a shape of its own. Marks carry their figures as
 * {@code data-} attributes, so that anyone can check what was drawn against what was found. Text
 * from outside is made harmless and escaped where it is written, in {@link
 * tripline.harness.report.drawing.Element} alone. Stateless; any thread; memory grows with the
 * marks drawn, of which a path has at most a few a unit of width.
 */
@NullMarked
package tripline.harness.report.drawing;

import org.jspecify.annotations.NullMarked;
