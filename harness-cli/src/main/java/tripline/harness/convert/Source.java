package tripline.harness.convert;

import tripline.link.SinkSource;

/** A recording that can be read as often as wanted. */
interface Source {
  /** What is known of it without its rows. */
  Facts facts();

  /**
   * Reads all of it.
   *
   * @param sinks asked for a sink for each stretch in which time goes forward
   */
  void play(SinkSource sinks);
}
