/**
 * The live view: where the valve is, what each contact does, what to turn next, while a logger
 * sends.
 *
 * <p>Entry types: {@link tripline.harness.watch.View} is all that is shown at one moment, {@link
 * tripline.harness.watch.Frame} lays it out for a terminal, {@link tripline.harness.watch.Words}
 * says the guide's steps in plain language.
 *
 * <p>Threads: views and frames are immutable. Memory: a frame is as large as the terminal.
 *
 * <p>Failure: text from sheets and loggers is made harmless where it comes in; a terminal that is
 * too small shows the most important lines first.
 */
@NullMarked
package tripline.harness.watch;

import org.jspecify.annotations.NullMarked;
