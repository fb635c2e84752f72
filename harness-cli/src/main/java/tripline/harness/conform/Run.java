package tripline.harness.conform;

/**
 * A stretch in which the logger sampled: indexes into what was heard.
 *
 * @param begun who began it
 * @param from right after the answer to start
 * @param quietTo up to here nothing was asked of it
 * @param to right after the answer to stop
 * @param rateMilliHz the rate it answered
 * @param gatherMillis as asked
 */
record Run(Begun begun, int from, int quietTo, int to, long rateMilliHz, int gatherMillis) {
  /** Who began a run. */
  enum Begun {
    BY_US,
    /** It samples from power-up (SPEC L2). */
    BY_ITSELF
  }
}
