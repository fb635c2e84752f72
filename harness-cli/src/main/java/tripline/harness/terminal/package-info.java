/**
 * The operator's end of a command that runs for a while: keys as they are pressed, and one line
 * that is written over and over.
 *
 * <p>Entry types: {@link tripline.harness.terminal.Keyboard}, {@link
 * tripline.harness.terminal.ProgressLine}.
 *
 * <p>Threads: a daemon thread reads standard input and another writes, so that a terminal that is
 * held never holds up the command. Memory: 64 presses and 256 lines that wait. Failure: without a
 * terminal keys are taken as lines, and progress is left out; standard input that ends means no
 * more keys.
 */
@NullMarked
package tripline.harness.terminal;

import org.jspecify.annotations.NullMarked;
