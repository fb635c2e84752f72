/**
 * The drawing of the house as rules over compiled classes.
 *
 * <p>Each rule is stated once and tried twice: against the product, where it must hold, and against
 * a class in {@code tripline.house.bad} that breaks it on purpose, where it must not.
 */
@NullMarked
package tripline.house;

import org.jspecify.annotations.NullMarked;
