package tripline.link;

import tripline.sample.SampleSink;

/** Gives the sink for the next stretch of a recording: times never step back within one sink. */
public interface SinkSource {
  /** Why a stretch begins. */
  enum Break {
    /** Nothing came before. */
    FIRST,
    /** The logger's clock began again (SPEC H10). */
    NEW_SESSION,
    /** The logger's clock stepped back, against SPEC L10. */
    STEP_BACK,
    /** The logger's clock may have wrapped while nobody could tell how often. */
    TIME_UNKNOWN
  }

  /** The sink for all that follows; the one before gets nothing more. */
  SampleSink next(Break why);
}
