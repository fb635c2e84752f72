package tripline.harness.rehearse.valve;

/** How the valve's cams were left by whoever set them last. */
public enum Setting {
  /** Both limits are out of tolerance, some others too. */
  MIS_SET,
  /** Everything lies within its tolerance. */
  RIGHT
}
