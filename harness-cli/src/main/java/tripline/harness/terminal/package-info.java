/**
 * The operator's end of a command that runs for a while: keys as they are pressed, and one line
 * that is written over and over.
 *
 * <p>Entry types: {@link tripline.harness.terminal.Keyboard}, {@link
 * tripline.harness.terminal.ProgressLine}.
 *
 * <p>Threads: a daemon thread reads standard input; the command asks for what it read. Memory: 64
 * presses that wait. Failure: without a terminal keys are taken as lines, and progress is left out;
 * standard input that ends means no more keys.
 */
@NullMarked
package tripline.harness.terminal;

import org.jspecify.annotations.NullMarked;
