package tripline.harness.jobfile;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import tripline.job.SheetRemark;
import tripline.job.SheetRemark.Severity;

/** Everything noticed while a sheet is read, and which paths could not be read. */
final class Notes {
  private record Note(Severity severity, Place place, String message) {}

  private final Places places;
  private final List<Note> notes = new ArrayList<>();
  private final Set<String> unread = new HashSet<>();

  Notes(Places places) {
    this.places = places;
  }

  /** An error about what stands (or should stand) at a path, which is not to be relied on. */
  void error(String path, String message) {
    unread.add(path);
    notes.add(new Note(Severity.ERROR, places.of(path), message));
  }

  /** Something that was assumed. */
  void doubt(String path, String message) {
    notes.add(new Note(Severity.DOUBT, places.of(path), message));
  }

  /** Nothing that rests on this path is to be believed; somebody else says why. */
  void unread(String path) {
    unread.add(path);
  }

  /** Takes over a remark about the sheet as a whole, unless it rests on something unread. */
  void remark(SheetRemark remark) {
    if (unread.stream().noneMatch(remark::restsOn)) {
      notes.add(new Note(remark.severity(), places.of(remark.path()), remark.message()));
    }
  }

  List<SheetNote> errors() {
    return of(Severity.ERROR);
  }

  List<SheetNote> doubts() {
    return of(Severity.DOUBT);
  }

  private List<SheetNote> of(Severity severity) {
    return notes.stream()
        .filter(n -> n.severity() == severity)
        .sorted(Comparator.comparing(Note::place).thenComparing(Note::message))
        .map(n -> new SheetNote(n.place().line(), n.place().column(), n.message()))
        .distinct()
        .toList();
  }
}
