/**
 * Serial ports: the only package that knows the serial library, and that calls the system.
 *
 * <p>Entry types: {@link tripline.harness.serial.SerialPorts} opens and lists ports, {@link
 * tripline.harness.serial.ByteLine} is an open one. {@link tripline.harness.serial.Reach} is how
 * others come to a line, again after it was lost.
 *
 * <p>Threads: one thread reads a line; any may write to it or close it, and closing ends a read at
 * once. Writes are done by a daemon thread of the line, because a write to a device that takes
 * nothing never returns.
 *
 * <p>Memory: a line holds at most {@value tripline.harness.serial.Outbox#MOST_WAITING} writes that
 * wait.
 *
 * <p>Failure: what cannot be opened is a {@link tripline.harness.failure.LinkFailure} of one line;
 * a line that goes away is a {@link tripline.harness.serial.LineGone}. A line that is gone never
 * comes back: another one is opened, with a new object of the library, for the old one may open
 * whatever device has the name by then.
 */
@NullMarked
package tripline.harness.serial;

import org.jspecify.annotations.NullMarked;
