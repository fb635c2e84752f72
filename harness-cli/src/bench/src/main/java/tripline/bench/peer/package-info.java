/**
 * What people would use instead, each a program of its own that prints how many contact edges a
 * recording holds.
 *
 * <p>They read the layout that {@link tripline.bench.MakeRecording} writes and check nothing. They
 * allocate as such programs do; a file they cannot read ends them.
 */
@NullMarked
package tripline.bench.peer;

import org.jspecify.annotations.NullMarked;
