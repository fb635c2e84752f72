package tripline.sample;

/**
 * Takes a recording sample by sample, in the order of time. The narrow door between the readers
 * (files, logger link) and the reduction: primitives only, so that nothing need be allocated per
 * sample.
 *
 * <p>Times are nanoseconds on the recording's own clock, never decreasing from call to call; a
 * reader that meets a step back in time ends this sink and feeds the rest of the recording to
 * another. Contact channel {@code i} is bit {@code i} of a mask (at most {@value
 * Channels#MOST_CONTACTS} channels).
 */
public interface SampleSink {
  /**
   * One row of the logger: what was read at one time.
   *
   * @param timeNs time of the row, ns
   * @param reading position in units of the position channel, or NaN for "no new reading"
   * @param known bit mask of the contact channels that were read in this row
   * @param closed bit mask of those among {@code known} that were closed
   */
  void onRow(long timeNs, double reading, long known, long closed);

  /**
   * Rows one after another that read the same contacts in the same states: {@link #onRow} of each.
   *
   * @param timesNs times of the rows, ns, rising
   * @param readings their positions
   * @param from index of the first of them in both arrays, which are the reader's and change after
   *     the call
   * @param to one past the index of the last
   * @param known as of one row
   * @param closed as of one row
   */
  default void onRows(
      long[] timesNs, double[] readings, int from, int to, long known, long closed) {
    for (int i = from; i < to; i++) {
      onRow(timesNs[i], readings[i], known, closed);
    }
  }

  /**
   * A contact edge stamped by the logger itself, finer than its rows.
   *
   * @param timeNs time of the edge, ns
   * @param resolutionNs width of the interval that ends at {@code timeNs} in which the edge lies,
   *     ns
   * @param channel contact channel index
   * @param state the state after the edge
   */
  void onEdge(long timeNs, long resolutionNs, int channel, ContactState state);

  /**
   * What the operator pressed.
   *
   * @param timeNs time of the mark, ns
   * @param mark its kind
   * @param text the mark as written in the recording
   */
  void onMark(long timeNs, Mark mark, String text);

  /**
   * Samples the logger or the link knows to be missing.
   *
   * @param fromNs last time before the loss, ns
   * @param toNs first time after it, ns
   * @param samples how many, or -1 where only the stretch of time is known
   */
  void onLoss(long fromNs, long toNs, long samples);
}
