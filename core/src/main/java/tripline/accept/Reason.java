package tripline.accept;

import java.util.Locale;

/** Why a trip point is not accepted over its strokes. */
public enum Reason {
  /** It is accepted. */
  NONE,
  /** Even read kindly, these trips leave less than the share within the tolerance. */
  OUTSIDE,
  /** The position readings cannot be relied on. */
  READINGS,
  /** No full stroke changed it. */
  NOT_SEEN,
  /** Its target is not known in turns: the stop or the span is missing. */
  NO_TARGET,
  /** Fewer strokes than asked for. */
  FEW_STROKES,
  /** It moves from stroke to stroke, by a drift or a step: no repeats of one thing. */
  UNSTEADY,
  /** One stroke stands out, so that the normal law the interval rests on does not hold. */
  OUTLIER,
  /** What all strokes have in common leaves no room: strokes do not help. */
  COMMON,
  /** The interval does not fit yet: more strokes narrow it. */
  SCATTER;

  /** As the result writes it. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
