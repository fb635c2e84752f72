package tripline.harness.watch;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tripline.harness.report.Columns;
import tripline.live.ContactNow;
import tripline.live.TargetNow;
import tripline.live.Whereabouts.Ahead;

/** Contacts as they are and as charted, and the targets ahead. */
record Tables(View.Seen seen, int columns, Speech speech) {
  private static final int NAME = 8;
  private static final int ROLE = 15;
  private static final int NOW = 8;
  private static final int CHARTED = 14;
  private static final int CONTACTS = 1 + NAME + ROLE + NOW + CHARTED;
  private static final int CAM = 9;
  private static final int TURNS = 7;
  private static final int DEGREES = 12;
  private static final int TARGETS = CAM + TURNS + DEGREES + 7;

  boolean fitSideBySide() {
    return columns >= CONTACTS + TARGETS - 1;
  }

  /** Both tables in the same lines. */
  List<Line> both() {
    List<Line> left = contacts();
    List<Line> right = targets();
    List<Line> lines = new ArrayList<>();
    for (int i = 0; i < Math.max(left.size(), right.size()); i++) {
      Line contact = i < left.size() ? left.get(i) : Line.EMPTY;
      Line padded = contact.fit(CONTACTS, speech.glyphs());
      lines.add(i < right.size() ? padded.and(right.get(i)) : padded);
    }
    return lines;
  }

  List<Line> contacts() {
    boolean roles = columns >= CONTACTS;
    List<Line> lines = new ArrayList<>();
    lines.add(
        Line.of(
            pad("CONTACT", 1 + NAME + (roles ? ROLE : 0)) + pad("now", NOW) + "charted here",
            Look.STRONG));
    for (ContactNow contact : seen.contacts()) {
      boolean against = contact.isAgainstChart();
      String role = roles ? pad(contact.contact().role().word(), ROLE) : "";
      String now = contact.state().map(s -> s.name().toLowerCase(Locale.ROOT)).orElse("not read");
      lines.add(
          Line.of((against ? "!" : " ") + pad(speech.safe(contact.contact().name()), NAME) + role)
              .and(pad(now, NOW), against ? Look.ACCENT : Look.PLAIN)
              .and(charted(contact)));
    }
    return lines;
  }

  private static String charted(ContactNow contact) {
    return switch (contact.charted()) {
      case OPEN -> "open";
      case CLOSED -> "closed";
      case CHANGES -> "changes here";
      case UNKNOWN -> "-";
    };
  }

  List<Line> targets() {
    List<Line> lines = new ArrayList<>();
    lines.add(Line.of(pad("TARGET", CAM) + pad("turns", TURNS) + "of the handwheel", Look.STRONG));
    for (TargetNow target : seen.targets()) {
      String name = target.cam() + target.edge().map(e -> " " + e).orElse("");
      lines.add(Line.of(pad(speech.safe(name), CAM) + target.ahead().map(this::ahead).orElse("-")));
    }
    return lines;
  }

  private String ahead(Ahead ahead) {
    return right(Speech.decimals(ahead.handwheelTurns(), 2), TURNS - 1)
        + right(speech.brief(ahead.handwheelTurns()), DEGREES - 1)
        + " "
        + ahead.toward().toward().word();
  }

  private String pad(String text, int width) {
    return Columns.fit(text, width - 1, speech.glyphs().cutMark()) + " ";
  }

  private static String right(String text, int width) {
    return " ".repeat(Math.max(0, width - Columns.width(text))) + text;
  }
}
