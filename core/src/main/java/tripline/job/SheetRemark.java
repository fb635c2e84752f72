package tripline.job;

import java.util.List;

/**
 * Something a job sheet says that does not make sense as a whole, or that deserves a second look.
 *
 * <p>A path is the sheet's keys joined by dots, lists with a 0-based index: {@code
 * contact[3].channel}, {@code cam[0].trip[1].turns}. Among {@code rests}, {@code [*]} stands for
 * every entry of a list.
 *
 * @param severity whether the sheet can be used at all
 * @param path the key the remark belongs to
 * @param rests other keys it rests on: where one of them could not be read, the remark is void
 * @param message what is wrong and what was expected, one line, no full stop
 */
public record SheetRemark(Severity severity, String path, List<String> rests, String message) {
  /** How much a remark weighs. */
  public enum Severity {
    /** The sheet contradicts itself: it cannot be used. */
    ERROR,
    /** The sheet can be used; an engineer should look at it again. */
    DOUBT
  }

  public SheetRemark {
    rests = List.copyOf(rests);
  }

  /** Whether the remark rests on the value at a path, or on something within it. */
  public boolean restsOn(String unread) {
    return within(path, unread) || rests.stream().anyMatch(rest -> within(rest, unread));
  }

  private static boolean within(String path, String unread) {
    String[] inner = path.split("\\.", -1);
    String[] outer = unread.split("\\.", -1);
    if (inner.length < outer.length) {
      return false;
    }
    for (int i = 0; i < outer.length; i++) {
      if (!same(inner[i], outer[i], i == outer.length - 1)) {
        return false;
      }
    }
    return true;
  }

  private static boolean same(String inner, String outer, boolean last) {
    if (inner.endsWith("[*]")) {
      String list = inner.substring(0, inner.length() - 3);
      return outer.equals(list) || outer.startsWith(list + "[");
    }
    return inner.equals(outer) || (last && inner.startsWith(outer + "["));
  }
}
