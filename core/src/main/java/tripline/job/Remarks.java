package tripline.job;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;

/** Gathers remarks about one sheet. */
final class Remarks {
  private final List<SheetRemark> all = new ArrayList<>();

  void error(String path, String message, String... rests) {
    all.add(new SheetRemark(SheetRemark.Severity.ERROR, path, List.of(rests), message));
  }

  void doubt(String path, String message, String... rests) {
    all.add(new SheetRemark(SheetRemark.Severity.DOUBT, path, List.of(rests), message));
  }

  List<SheetRemark> all() {
    return List.copyOf(all);
  }

  /** A number as a person writes it: four significant digits at most, no exponent. */
  static String figure(double value) {
    return new BigDecimal(value).round(new MathContext(4)).stripTrailingZeros().toPlainString();
  }

  static String contact(int index, String key) {
    return "contact[" + index + "]." + key;
  }

  static String cam(int index, String key) {
    return "cam[" + index + "]." + key;
  }

  /** Path of a cam's trip point, which is a list only for a window. */
  static String trip(JobSheet sheet, int cam, int trip) {
    return cam(cam, sheet.cams().get(cam).isWindow() ? "trip[" + trip + "]" : "trip");
  }
}
