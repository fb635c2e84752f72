package tripline.truth;

/**
 * A true change of a contact: its first edge.
 *
 * @param channel channel index
 * @param closed the new state is closed
 * @param timeS when
 * @param x drive position there, turns
 * @param handwheel handwheel-side position there, turns
 * @param speed handwheel-side speed there, turns/s, + opening
 * @param atRest nothing moved
 * @param stroke number of the stroke it belongs to
 */
public record TrueChange(
    int channel,
    boolean closed,
    double timeS,
    double x,
    double handwheel,
    double speed,
    boolean atRest,
    int stroke) {}
