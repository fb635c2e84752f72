package tripline.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeSet;
import tripline.compare.Note.Code;
import tripline.job.Direction;
import tripline.measure.Estimate;

/** Finds what there is to note. */
final class Notes {
  private final Account before;
  private final Account after;
  private final Kinship kinship;
  private final Family trips;
  private final List<Note> notes = new ArrayList<>();

  Notes(Account before, Account after, Kinship kinship, Family trips) {
    this.before = before;
    this.after = after;
    this.kinship = kinship;
    this.trips = trips;
  }

  List<Note> of(
      List<CamMove> cams,
      List<TripMove> contacts,
      Map<Direction, Fellows> fellows,
      SortedMap<Direction, Estimate> together,
      Movement span,
      List<SheetDifference> sheet) {
    measurement();
    origin();
    together.forEach((direction, by) -> together(direction, by, fellows));
    nobody(fellows);
    turned(contacts);
    span(span);
    sheet(cams, sheet);
    return List.copyOf(notes);
  }

  private void measurement() {
    if (kinship.of() == Kinship.Of.SAME_MEASUREMENT) {
      boolean one = before.origin().sha256().equals(after.origin().sha256());
      add(
          one ? Code.SAME_RESULT : Code.SAME_RECORDINGS,
          one
              ? "Both are the same result: nothing can have moved."
              : "Both are made from the same recordings: nothing can have moved, and what differs"
                  + " comes from the sheets.");
    } else if (before.origin().recordings().stream().anyMatch(this::isRecordedInBoth)
        && kinship.of() == Kinship.Of.APART) {
      add(
          Code.SAME_RECORDINGS,
          "Some recordings are in both results: what is common to them is not allowed for, and the"
              + " intervals are wider than they need be.");
    }
  }

  private boolean isRecordedInBoth(String sha256) {
    return after.origin().recordings().contains(sha256);
  }

  private void origin() {
    Origin origin = Origin.of(before, after);
    if (origin.isRegistered()) {
      add(
          Code.REGISTERED,
          "The position zero was lost in between, and one result was laid over the other by its"
              + " contact changes: how far a trip point moved against the valve is not known, only"
              + " how far cams moved against each other. Touch the hard stops.");
    } else if (!origin.isCommon()) {
      add(
          Code.OTHER_ORIGIN,
          "x counts from the "
              + words(before.travel().datum())
              + " before and from the "
              + words(after.travel().datum())
              + " after: how far a trip point moved against the valve is not known, only how far"
              + " cams moved against each other. Touch the closed stop, or bring it with"
              + " --reference.");
    }
  }

  private static String words(String datum) {
    return datum.replace('-', ' ');
  }

  private void together(Direction direction, Estimate by, Map<Direction, Fellows> fellows) {
    int stayed = Optional.ofNullable(fellows.get(direction)).map(f -> f.stayed().size()).orElse(0);
    if (trips.isMoved(by)) {
      add(
          Code.TOGETHER,
          String.format(
              Locale.ROOT,
              "While %s, %d trip points moved by %+.3f turns together and not against each other:"
                  + " the stop they are measured from lies elsewhere, or the whole contact gear"
                  + " has shifted.",
              direction.word(),
              stayed,
              by.value()));
    }
  }

  private void nobody(Map<Direction, Fellows> fellows) {
    if (fellows.values().stream().anyMatch(Fellows::scattered)) {
      add(
          Code.NOBODY_STAYED,
          "So many cams moved against each other that none can be named as the one that stayed.");
    }
  }

  private void turned(List<TripMove> contacts) {
    TreeSet<String> names = new TreeSet<>();
    contacts.stream().filter(TripMove::turned).forEach(t -> names.add(t.contact()));
    if (!names.isEmpty()) {
      add(
          Code.TURNED,
          "Changes the other way round than before: " + String.join(", ", names) + ".");
    }
  }

  private void span(Movement span) {
    if (span.seen() == Seen.MOVED) {
      add(
          Code.SPAN_CHANGED,
          String.format(
              Locale.ROOT,
              "The hard stops lie %.3f turns %s apart than before: the valve seats or ends"
                  + " elsewhere, or a stop was not reached.",
              Math.abs(span.by().orElseThrow().value()),
              span.by().orElseThrow().value() > 0 ? "further" : "less"));
    }
  }

  private void sheet(List<CamMove> cams, List<SheetDifference> sheet) {
    if (before.origin().jobSha256().equals(after.origin().jobSha256())) {
      return;
    }
    if (sheet.isEmpty()) {
      add(Code.SHEET_CHANGED, "The job sheet was changed, in nothing that the results tell.");
    } else if (cams.stream().anyMatch(c -> c.before().decision() != c.after().decision())) {
      add(
          Code.SHEET_CHANGED,
          "The job sheet was changed, so decisions may differ where nothing moved.");
    }
  }

  private void add(Code code, String message) {
    notes.add(new Note(code, message));
  }
}
