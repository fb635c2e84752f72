package tripline.harness.jobfile;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import tripline.job.SheetRemark;
import tripline.job.SheetRemark.Severity;

/** Everything noticed while a sheet is read, and which paths could not be read. */
final class Notes {
  private record Note(Kind kind, Place place, String message) {
    static int inOrder(Note a, Note b) {
      int place = a.place.compareTo(b.place);
      return place != 0 ? place : a.message.compareTo(b.message);
    }
  }

  private enum Kind {
    ERROR,
    DOUBT,
    ASSUMED
  }

  private final Places places;
  private final List<Note> notes = new ArrayList<>();
  private final Set<String> unread = new HashSet<>();

  Notes(Places places) {
    this.places = places;
  }

  /** An error about what stands (or should stand) at a path, which is not to be relied on. */
  void error(String path, String message) {
    unread.add(path);
    notes.add(new Note(Kind.ERROR, places.of(path), message));
  }

  /** Something to look at again. */
  void doubt(String path, String message) {
    notes.add(new Note(Kind.DOUBT, places.of(path), message));
  }

  /** Something the sheet does not say, and what is taken in its place. */
  void assumed(String path, String message) {
    notes.add(new Note(Kind.ASSUMED, places.of(path), message));
  }

  /** Nothing that rests on this path is to be believed; somebody else says why. */
  void unread(String path) {
    unread.add(path);
  }

  /** Takes over a remark about the sheet as a whole, unless it rests on something unread. */
  void remark(SheetRemark remark) {
    if (unread.stream().noneMatch(remark::restsOn)) {
      Kind kind = remark.severity() == Severity.ERROR ? Kind.ERROR : Kind.DOUBT;
      notes.add(new Note(kind, places.of(remark.path()), remark.message()));
    }
  }

  List<SheetNote> errors() {
    return of(EnumSet.of(Kind.ERROR));
  }

  /** Assumptions among them. */
  List<SheetNote> doubts() {
    return of(EnumSet.of(Kind.DOUBT, Kind.ASSUMED));
  }

  List<SheetNote> assumptions() {
    return of(EnumSet.of(Kind.ASSUMED));
  }

  private List<SheetNote> of(Set<Kind> kinds) {
    return notes.stream()
        .filter(n -> kinds.contains(n.kind()))
        .sorted(Note::inOrder)
        .map(n -> new SheetNote(n.place().line(), n.place().column(), n.message()))
        .distinct()
        .toList();
  }
}
