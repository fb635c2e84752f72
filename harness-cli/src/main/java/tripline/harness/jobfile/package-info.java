/**
 * TOML job sheets: text → {@link tripline.job.JobSheet} and the layout of its recordings.
 *
 * <p>Entry: {@link tripline.harness.jobfile.JobFile#read}. A sheet that cannot be used throws one
 * {@code InputFailure} that holds everything wrong with it, sorted by place, at most fifty lines:
 * syntax first and alone; else unknown and missing keys, wrong types, numbers out of range and
 * {@link tripline.job.SheetSense}'s errors together. A value that could not be read silences only
 * what rests on it. Holds the whole sheet in memory (at most 1 MiB). Stateless; any thread.
 */
@NullMarked
package tripline.harness.jobfile;

import org.jspecify.annotations.NullMarked;
