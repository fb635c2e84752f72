/**
 * One class per command: options in, work handed to the packages beside this one, answer out.
 *
 * <p>A command is a {@code Callable<ExitStatus>} annotated for picocli, or with a {@code
 * CommandSpec} of its own where the start must be short, and listed once in {@link
 * tripline.harness.command.Commands}. Its answer goes to the writer of its {@code CommandSpec}
 * ({@code spec.commandLine().getOut()}), never to {@code System.out}, which is turned to standard
 * error so that no library can spoil an answer. It reports trouble by throwing from {@code
 * tripline.harness.failure}. One thread.
 */
@NullMarked
package tripline.harness.command;

import org.jspecify.annotations.NullMarked;
