/**
 * What is wrong or worth knowing: one small class a code, all looking at the same evidence.
 *
 * <p>One cause is one finding: each class says only what it sees, and what another finding already
 * explains is dropped. Pure functions; safe from any thread.
 */
@NullMarked
package tripline.finding;

import org.jspecify.annotations.NullMarked;
