package tripline.job;

import java.util.List;

/**
 * Whether a job sheet makes sense as a whole: what no single key can tell. Pure; each idea has a
 * class of its own beside this one.
 */
public final class SheetSense {
  private SheetSense() {}

  /** Everything to be said about a sheet; in no particular order. */
  public static List<SheetRemark> of(JobSheet sheet) {
    Remarks remarks = new Remarks();
    NameSense.check(sheet, remarks);
    CamSense.check(sheet, remarks);
    TripSense.check(sheet, remarks);
    WindowSense.check(sheet, remarks);
    LimitSense.check(sheet, remarks);
    RoleSense.check(sheet, remarks);
    BypassSense.check(sheet, remarks);
    LampSense.check(sheet, remarks);
    EndSense.check(sheet, remarks);
    TravelSense.check(sheet, remarks);
    LoggerSense.check(sheet, remarks);
    TerminalSense.check(sheet, remarks);
    return remarks.all();
  }
}
