package tripline.measure;

/** The law of one part of an uncertainty; all are symmetric about zero. */
public enum Shape {
  /** Gaussian: a fit, a mean, anything that is itself a sum of many effects. */
  NORMAL,
  /** Uniform between bounds: a time bracket, a resolution step (JCGM 100 4.3.7). */
  RECTANGULAR
}
