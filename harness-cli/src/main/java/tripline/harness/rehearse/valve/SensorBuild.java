package tripline.harness.rehearse.valve;

import tripline.job.SensorSide;

/**
 * The position sensor as built.
 *
 * @param side which side of the lost motion it sits on
 * @param turnsPerUnit handwheel turns a unit of reading; negative: falls while opening
 * @param numerator units a count are {@code numerator / denominator}
 * @param denominator see above
 * @param modulusCounts counts after which it wraps; 0: it does not
 * @param noiseTurns standard deviation of its white noise, turns
 * @param offsetTurns what it reads at x = 0, turns
 * @param delayNs from the motion to the stamp of its reading, ns, &gt;= 0
 */
public record SensorBuild(
    SensorSide side,
    double turnsPerUnit,
    int numerator,
    long denominator,
    long modulusCounts,
    double noiseTurns,
    double offsetTurns,
    long delayNs) {

  /** The count for a position of the side it sits on, noise in turns included. */
  int count(double turns, double noise) {
    double units = (turns + offsetTurns + noise) / turnsPerUnit;
    long count = (long) Math.rint(units * denominator / numerator);
    return (int) (modulusCounts > 0 ? Math.floorMod(count, modulusCounts) : count);
  }
}
