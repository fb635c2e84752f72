/**
 * How a command that runs until it is told to end learns of it: Ctrl-C, a terminal that is closed,
 * a polite kill. Entry: {@link tripline.harness.ending.EndRequest}. Safe from any thread; no
 * memory; where the runtime lets nobody handle signals, they end the process as they always did.
 */
@NullMarked
package tripline.harness.ending;

import org.jspecify.annotations.NullMarked;
