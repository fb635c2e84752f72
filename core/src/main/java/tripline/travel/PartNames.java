package tripline.travel;

import tripline.job.End;

/** Names of the parts of a travel figure's uncertainty, as results print them. */
public final class PartNames {
  /** Local fit of position against time. */
  public static final String FIT = "fit";

  /** Where within its time bracket a sampled contact changed, seen through the speed. */
  public static final String BRACKET = "bracket";

  /** The same for an edge stamped by the logger, finer than its rows. */
  public static final String RESOLUTION = "resolution";

  /** Unknown rest of the skew between position and contact stamps, seen through the speed. */
  public static final String SKEW = "skew";

  /** Edges of a bouncing contact that fell between samples. */
  public static final String BOUNCE = "bounce";

  /** Position readings missing around the change: it lies anywhere in between. */
  public static final String GAP = "gap";

  /** Turns per unit of reading. */
  public static final String SCALE = "scale";

  /** Lost motion, measured. */
  public static final String PLAY = "play";

  /** Lost motion, assumed because only one direction was run. */
  public static final String PLAY_ASSUMED = "play-assumed";

  /** Scatter of one contact from stroke to stroke. */
  public static final String REPEAT = "repeat";

  /** Where the reading stood at rest. */
  public static final String REST = "rest";

  /** Registration over the result that brought the stops. */
  public static final String REGISTRATION_REFERENCE = "registration:reference";

  /** Span by the sheet, where a target in per cent is measured from the other stop. */
  public static final String SHEET_SPAN = "sheet-span";

  private PartNames() {}

  /** Whether the part of a name is one error in all figures of one result that carry it. */
  public static boolean isShared(String name) {
    return switch (name) {
      case SKEW, SCALE, PLAY, PLAY_ASSUMED, SHEET_SPAN -> true;
      default ->
          name.startsWith("stop:")
              || name.startsWith("stop-count:")
              || name.startsWith("registration:");
    };
  }

  /** Where a hard stop was felt. */
  public static String stop(End end) {
    return "stop:" + end.word();
  }

  /** One count of the position channel at a hard stop. */
  public static String stopCount(End end) {
    return "stop-count:" + end.word();
  }

  /** Registration of a recording whose position zero was lost; counts recordings from 1. */
  public static String registration(int firstRecording) {
    return "registration:" + (firstRecording + 1);
  }
}
