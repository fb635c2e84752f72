/**
 * A serial device with no hardware: a pseudo terminal under a name of its own, made and held by a
 * child process (socat, or python3 where there is none). Only these two programs are run, with
 * arguments and never through a shell.
 *
 * <p>Entry type: {@link tripline.harness.rehearse.port.VirtualPort}; {@link
 * tripline.harness.rehearse.port.PortMaker} makes one. A port that is closed is gone as when it is
 * unplugged; another may be made under the same name.
 *
 * <p>Threads: a port has one daemon thread that reads and one that writes; its methods never wait.
 * Memory: {@value tripline.harness.rehearse.port.ChildPort#ROOM} bytes each way. Failure: a port
 * that cannot be made is a {@link tripline.harness.failure.LinkFailure}.
 */
@NullMarked
package tripline.harness.rehearse.port;

import org.jspecify.annotations.NullMarked;
