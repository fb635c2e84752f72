/**
 * Samples in, a {@link tripline.reduce.Trace} out: the only part of the analysis that sees samples.
 *
 * <p>Entry type: {@link tripline.reduce.Reduction}. One thread feeds one reduction; it may be asked
 * for its trace at any time and goes on. Everything here is in units of the position reading and
 * nanoseconds of the recording: hard stops and lost motion are only known at the end of a
 * recording, so turning readings into travel is the next room's work.
 *
 * <p><b>Way through it.</b> {@link tripline.reduce.ContactBursts} tells settled changes from
 * disturbances; {@link tripline.reduce.PositionTrack} keeps recent readings, follows moves and
 * rests, and watches for what is wrong with them; {@link tripline.reduce.SpotLog} cuts fit windows
 * about whatever happened; {@link tripline.reduce.PlaceSolver} places all of it at the end.
 *
 * <p><b>Footprint.</b> Nothing is allocated per sample. Fixed: 28 bytes x 32768 runs of recent
 * readings, 16 x 4096 points of outline, 36 x 256 blocks, some 20 kB of tables: 1.02 MB. Beside
 * that at most 7.5 kB a change, disturbance or mark (4096 of them are kept, the rest is counted: 31
 * MB) and 350 bytes a movement. Twenty strokes of sixteen contacts: 1.02 MB + 320 x 7.5 kB = 3.4
 * MB, whether they were sampled for a minute or a day.
 *
 * <p><b>What a failure looks like.</b> Nothing a logger writes makes this throw. Samples missing
 * are a {@link tripline.reduce.Loss}, readings that slip, freeze or repeat a {@link
 * tripline.reduce.ReadingFault}, a position that cannot be had a {@link tripline.reduce.Place} that
 * is not known.
 */
@NullMarked
package tripline.reduce;

import org.jspecify.annotations.NullMarked;
