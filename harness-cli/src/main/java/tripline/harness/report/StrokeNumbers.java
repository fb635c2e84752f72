package tripline.harness.report;

import tripline.result.Result;

/** Strokes counted from 1 over all recordings, as text and drawings name them. */
public final class StrokeNumbers {
  private StrokeNumbers() {}

  /** Number of a stroke that is the so-many-th (from 0) of its recording. */
  public static int of(Result result, int recording, int stroke) {
    int before = 0;
    for (int r = 0; r < recording; r++) {
      before += result.recordings().get(r).strokes().size();
    }
    return before + stroke + 1;
  }
}
