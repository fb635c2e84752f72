/**
 * A make-believe valve actuator: hard stops that yield a little, lost motion, cams and the contacts
 * they move, bounce, torque contacts, a motor that coasts, a hand at the handwheel. It knows the
 * truth that a recording of it is measured against.
 *
 * <p>Entry types: {@link tripline.harness.rehearse.valve.ValveBuild} says what is built, from a job
 * sheet and a seed; {@link tripline.harness.rehearse.valve.VirtualValve} is the valve at work, and
 * a {@link tripline.harness.rehearse.valve.Mover} moves it.
 *
 * <p>Time is the valve's own, ns from its begin, and passes in steps of 1 ms; between two steps the
 * motion is a cubic. The same seed and the same moves give the same valve to the last bit ({@code
 * StrictMath}, a generator of its own). Travel is in handwheel turns of the drive, 0 at the closed
 * hard stop.
 *
 * <p>Not modelled: the torque that lifts a valve off its seat, wear, temperature. One thread.
 * Memory: the last second of the motion, and the edges of one step.
 */
@NullMarked
package tripline.harness.rehearse.valve;

import org.jspecify.annotations.NullMarked;
