/**
 * The process: entry point, exit status, logging.
 *
 * <p>Only here is a failure turned into a status and a line, and only here is logging set up. One
 * thread.
 */
@NullMarked
package tripline.harness;

import org.jspecify.annotations.NullMarked;
