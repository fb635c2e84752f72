/**
 * The first use of what an analysis uses, made beside the reading of the command line, the sheet
 * and the recording; {@link tripline.harness.firstuse.FirstUse} is the entry.
 *
 * <p>The virtual machine loads and links code when it is first run, and compiles it after it has
 * run for a while. For a small recording that is most of the time there is, so a second processor
 * analyses a made-up one meanwhile. One daemon thread; the results are thrown away, nothing is
 * written and nothing waits for it. Some megabytes of garbage at most. If it fails, the command
 * goes on without it and the log says so (level debug).
 */
@NullMarked
package tripline.harness.firstuse;

import org.jspecify.annotations.NullMarked;
