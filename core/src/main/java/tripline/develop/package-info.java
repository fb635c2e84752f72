/**
 * The as-built development: strokes, trips of every contact in travel coordinate x, settings, and
 * for powered strokes what stopped them and how far they coasted. Pure functions; safe from any
 * thread.
 */
@NullMarked
package tripline.develop;

import org.jspecify.annotations.NullMarked;
