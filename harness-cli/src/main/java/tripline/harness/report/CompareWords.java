package tripline.harness.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import tripline.compare.CamMove;
import tripline.compare.Comparison;
import tripline.compare.EndMove;
import tripline.compare.Family;
import tripline.compare.Movement;
import tripline.compare.Note;
import tripline.compare.Seen;
import tripline.compare.SheetDifference;
import tripline.compare.TripMove;
import tripline.job.End;
import tripline.measure.Estimate;

/** The sentences of a comparison, for screen and paper. */
public final class CompareWords {
  /** More than these are counted, not named. */
  private static final int MOST_NAMED = 4;

  private CompareWords() {}

  /** {@code MOVED}, {@code NO MOVE SEEN}, {@code NOT KNOWN}. */
  public static String verdict(Comparison comparison) {
    return comparison.answer().word().replace('-', ' ').toUpperCase(Locale.ROOT);
  }

  /** What moved, in one sentence. */
  public static String sentence(Comparison comparison) {
    List<CamMove> cams = comparison.cams();
    List<CamMove> moved = cams.stream().filter(c -> c.seen() == Seen.MOVED).toList();
    long unknown = cams.stream().filter(c -> c.seen() == Seen.NOT_KNOWN).count();
    List<String> parts = new ArrayList<>();
    parts.add(
        "%s of %s moved%s"
            .formatted(
                moved.isEmpty() ? "none" : Integer.toString(moved.size()),
                counted(cams.size(), "trip point"),
                moved.isEmpty()
                    ? ""
                    : ": " + named(moved.stream().map(CompareWords::by).toList())));
    if (unknown > 0) {
      parts.add(unknown + " not known in both");
    }
    List<String> contacts =
        comparison.trips().stream()
            .filter(t -> t.move().seen() == Seen.MOVED)
            .filter(t -> moved.stream().noneMatch(c -> c.name().equals(t.tripPoint())))
            .map(TripMove::contact)
            .distinct()
            .toList();
    if (!contacts.isEmpty()) {
      parts.add("contacts that moved on cams that did not: " + named(contacts));
    }
    List<String> figures = changed(comparison);
    if (!figures.isEmpty()) {
      parts.add("changed besides: " + String.join(", ", figures));
    }
    return String.join("; ", parts);
  }

  private static String by(CamMove cam) {
    return cam.stated()
        .map(
            by ->
                "%s %s turns toward %s"
                    .formatted(
                        cam.name(),
                        FigureText.value(Math.abs(by.value()), by.expanded95()),
                        by.value() < 0 ? "closed" : "open"))
        .orElse(cam.name());
  }

  private static String named(List<String> names) {
    return names.size() <= MOST_NAMED
        ? String.join(", ", names)
        : String.join(", ", names.subList(0, MOST_NAMED)) + " ...";
  }

  private static List<String> changed(Comparison comparison) {
    List<String> changed = new ArrayList<>();
    for (EndMove end : comparison.ends()) {
      if (!followsItsCam(comparison, end)) {
        add(changed, end.backoff(), end.end().word() + " backoff");
      }
      add(changed, end.coast(), end.end().word() + " coast");
      add(changed, end.margin(), end.end().word() + " margin");
    }
    add(changed, comparison.span(), "span");
    add(changed, comparison.lostMotion(), "lost motion");
    comparison.cams().forEach(c -> add(changed, c.differential(), "differential of " + c.name()));
    return changed;
  }

  /** That a backoff changes where its limit cam moved goes without saying. */
  private static boolean followsItsCam(Comparison comparison, EndMove end) {
    String role = end.end() == End.CLOSED ? "limit-closing" : "limit-opening";
    return comparison.cams().stream()
        .filter(c -> c.seen() == Seen.MOVED)
        .flatMap(
            c ->
                comparison.after().contacts().stream().filter(k -> k.cam().equals(c.after().cam())))
        .anyMatch(contact -> contact.role().equals(role));
  }

  private static void add(List<String> changed, Movement move, String name) {
    if (move.seen() == Seen.MOVED) {
      changed.add(name);
    }
  }

  /** What a reader should know first; the order of the files among it. */
  public static List<String> notes(ComparedFiles files) {
    Stream<String> backward =
        files.isBackward()
            ? Stream.of("By the loggers' clocks the later result was recorded first.")
            : Stream.empty();
    return Stream.concat(backward, files.comparison().notes().stream().map(Note::message)).toList();
  }

  /** A difference of the sheets. */
  public static String difference(SheetDifference d) {
    String what = d.what().replace('-', ' ') + " of " + d.name();
    if (d.before().isEmpty()) {
      return d.what() + " " + d.name() + " is new";
    }
    return d.after().isEmpty()
        ? d.what() + " " + d.name() + " is gone"
        : what + ": " + d.before() + " before, " + d.after() + " now";
  }

  /** What "moved" means; nothing where nothing can have moved. */
  public static Optional<String> method(Comparison comparison) {
    Family family = comparison.tripFamily();
    if (!family.can() || family.figures() == 0) {
      return Optional.empty();
    }
    String text =
        ("Moved is said beyond %s standard uncertainties of the difference: of twenty comparisons"
                + " like this one, of %s, in which nothing moved, one says so by chance. What both"
                + " results share has cancelled. A cam's own scatter counts as far as its strokes"
                + " showed it.")
            .formatted(Figures.decimals(family.factor(), 1), counted(family.figures(), "figure"));
    return Optional.of(text);
  }

  /** A movement with its sign and 95 % interval; a dash where there is none. */
  static String signed(Rounded rounded, Optional<Estimate> by) {
    return by.map(
            b ->
                Rounded.signed(b.value(), b.expanded95())
                    + (b.u() > 0 ? " " + rounded.half(b.expanded95()) : ""))
        .orElse("-");
  }

  /** A figure rounded to what it deserves; a dash where there is none. */
  static String figure(Optional<Estimate> figure) {
    return figure.map(f -> FigureText.value(f.value(), f.expanded95())).orElse("-");
  }

  private static String counted(int count, String what) {
    return HeadText.counted(count, what);
  }
}
