package tripline.study;

import tripline.reduce.ReductionSettings;
import tripline.reduce.Trace;
import tripline.sample.SampleSink;

/** The reduction under study. */
interface Reducer {
  SampleSink sink();

  Trace finish();

  /** Makes one for a recording. */
  interface Maker {
    Reducer make(ReductionSettings settings);
  }
}
