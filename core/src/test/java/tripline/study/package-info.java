/**
 * Studies: the product against the model that knows the truth ({@code tripline.truth}), over grids
 * of loggers and drives. Each has a main for the full table and a smaller version in the normal
 * build.
 */
package tripline.study;
