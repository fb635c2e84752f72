package tripline.reduce;

import tripline.measure.Shape;

/** A stretch of time in which the reading moved one way, or stood still. */
public sealed interface Movement {
  /** Begin, ns. */
  long fromNs();

  /** End, ns. */
  long toNs();

  /**
   * The reading stood still.
   *
   * @param reading mean reading; of a coarse encoder that flickers, where its flicker places it
   * @param u its standard uncertainty (noise and quantisation), reading units
   * @param low lowest smoothed reading of the stretch
   * @param high highest smoothed reading of the stretch
   * @param grain what it is known by
   */
  record Rest(
      long fromNs, long toNs, double reading, double u, double low, double high, Grain grain)
      implements Movement {}

  /** What the reading of a rest is known by. */
  enum Grain {
    /** The mean of readings finer than their noise: another rest there errs by itself. */
    NOISE,
    /** How readings flicker between counts: another rest at the same place errs much alike. */
    FLICKER,
    /** One count, and it may be anywhere in it: another rest at the same place errs alike. */
    COUNT;

    /** Law of the error. */
    public Shape law() {
      return this == COUNT ? Shape.RECTANGULAR : Shape.NORMAL;
    }
  }

  /**
   * The reading moved one way.
   *
   * @param from smoothed reading at its begin
   * @param to smoothed reading at its end
   * @param sign +1 the reading rose, -1 it fell
   * @param run speed of its steady middle part
   * @param stopping how it came to a standstill; a move that turned over into another has none (see
   *     {@link Stopping#NONE})
   */
  record Move(
      long fromNs, long toNs, double from, double to, int sign, Speed run, Stopping stopping)
      implements Movement {}

  /**
   * A speed.
   *
   * @param unitsPerS reading units per second, signed
   * @param u standard uncertainty
   * @param ripple relative standard deviation of the speed about its mean (load ripple, hand)
   */
  record Speed(double unitsPerS, double u, double ripple) {}
}
