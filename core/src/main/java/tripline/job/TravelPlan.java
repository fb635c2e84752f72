package tripline.job;

import java.util.OptionalDouble;

/**
 * What the travel is expected to be; every figure but the tolerances is optional.
 *
 * @param spanTurns expected travel between the hard stops, handwheel turns, &gt; 0
 * @param spanToleranceTurns its tolerance, turns, &gt;= 0; empty = span is not judged
 * @param lostMotionTurns the most that is accepted, turns, &gt;= 0
 * @param differentialTurns the most that is accepted of one cam, turns, &gt;= 0
 * @param strokeTimeS expected time of a full motor stroke, s, &gt; 0
 * @param strokeTimeToleranceS its tolerance, s, &gt;= 0
 */
public record TravelPlan(
    OptionalDouble spanTurns,
    OptionalDouble spanToleranceTurns,
    OptionalDouble lostMotionTurns,
    OptionalDouble differentialTurns,
    OptionalDouble strokeTimeS,
    OptionalDouble strokeTimeToleranceS) {}
