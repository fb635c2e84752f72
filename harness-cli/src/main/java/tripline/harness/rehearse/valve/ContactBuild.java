package tripline.harness.rehearse.valve;

import tripline.job.Contact;

/**
 * A position contact as built.
 *
 * @param contact as charted
 * @param cam index of its cam
 * @param makeDelayTurns how much later than its cam's trip point it makes, in either direction
 *     (break before make), &gt;= 0; it breaks at the trip point itself
 */
public record ContactBuild(Contact contact, int cam, double makeDelayTurns) {}
