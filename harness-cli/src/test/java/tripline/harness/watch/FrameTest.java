package tripline.harness.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import tripline.harness.report.Columns;
import tripline.harness.report.Glyphs;
import tripline.harness.terminal.TerminalSize;
import tripline.job.Direction;
import tripline.job.End;
import tripline.job.JobIdentity;
import tripline.job.JobSheet;
import tripline.live.LiveAnswer;
import tripline.live.Rig;
import tripline.live.Sites;

/** What is laid out for the room there is. */
class FrameTest {
  private static final TerminalSize USUAL = new TerminalSize(80, 24);
  private static View atStart;
  private static View atStop;
  private static View toCome;
  private static View tripped;

  @BeforeAll
  static void session() {
    Rig rig = Sites.rig(Sites.FINE, 0.85, 2.5, Sites.SPAN - 0.2, 5);
    atStart = view(rig);
    rig.turn(-100);
    rig.mark(End.CLOSED);
    atStop = view(rig);
    rig.turn(1.75);
    toCome = view(rig);
    rig.turn(-1.25);
    rig.adjust("close", false, Direction.CLOSING);
    rig.adjust("close", true, Direction.CLOSING);
    tripped = view(rig);
  }

  private static View.Link link() {
    return new View.Link("/dev/ttyUSB0", "", 754.2, 200, 3, Optional.of("hand.capture"), "");
  }

  private static View view(Rig rig) {
    LiveAnswer answer = rig.answer();
    return new View(answer.sheet(), link(), Optional.of(View.Seen.of(answer, rig.live.now())));
  }

  private static List<String> text(View view, TerminalSize size, Glyphs glyphs) {
    return Frame.of(view, size, glyphs).lines().stream().map(Line::text).toList();
  }

  private static String shown(View view) {
    return String.join("\n", text(view, USUAL, Glyphs.UNICODE));
  }

  @Test
  void everySizeIsFilledExactly() {
    for (Glyphs glyphs : Glyphs.values()) {
      for (int columns : new int[] {1, 2, 7, 20, 39, 54, 55, 56, 79, 80, 81, 100, 101, 132}) {
        for (int rows : new int[] {1, 2, 3, 5, 9, 13, 24, 25, 40, 60}) {
          for (View view : List.of(atStart, atStop, toCome, tripped)) {
            List<String> lines = text(view, new TerminalSize(columns, rows), glyphs);
            assertThat(lines).hasSize(rows);
            assertThat(lines).extracting(Columns::width).containsOnly(columns);
            if (glyphs == Glyphs.ASCII) {
              assertThat(String.join("", lines)).matches("[ -~]*");
            }
          }
        }
      }
    }
  }

  @Test
  void whatToDoComesFirstWhereThereIsLittleRoom() {
    assertThat(text(toCome, new TerminalSize(40, 2), Glyphs.UNICODE))
        .satisfiesExactly(
            title -> assertThat(title).contains("CLOSED END: COME TO THE TARGET"),
            act -> assertThat(act).contains("Turn toward closed: 1.2"));
    assertThat(String.join("\n", text(toCome, new TerminalSize(40, 10), Glyphs.UNICODE)))
        .contains("POSITION  1.4")
        .doesNotContain("LAST CHANGES");
  }

  @Test
  void theUsualSizeShowsEverything() {
    assertThat(shown(toCome))
        .contains(
            "CW-114",
            "/dev/ttyUSB0  200 rows/s  lost 3  kept in hand.capture  0:12:34",
            "CLOSED END: COME TO THE TARGET",
            "Last approach: changed 0.85",
            " early.",
            "from the closed stop  turns  standing",
            "▼",
            "●",
            " 11-12   limit-closing  closed  closed ",
            " closed stop  o open stop  a adjusted",
            "11-12    closed  at 0.85",
            "SO FAR  REJECT   closed end 0.85");
    assertThat(shown(tripped)).contains("CLOSED END: TRIPPED", "press a", "at rest");
    assertThat(shown(atStart))
        .contains("FIND A STOP", "Isolate, lock out and prove dead", "no stop is known yet");
  }

  /** What lies below the guide does not jump when the guide says more or less. */
  @Test
  void partsStayWhereTheyAre() {
    for (String part : List.of("POSITION", "CONTACT", "LAST CHANGES", "SO FAR")) {
      assertThat(List.of(atStart, atStop, toCome, tripped))
          .extracting(v -> rowOf(text(v, USUAL, Glyphs.UNICODE), part))
          .as(part)
          .containsOnly(rowOf(text(atStart, USUAL, Glyphs.UNICODE), part));
    }
  }

  private static int rowOf(List<String> lines, String part) {
    return lines.indexOf(
        lines.stream().filter(l -> l.startsWith(part)).collect(Collectors.toList()).get(0));
  }

  @Test
  void aLineThatIsLostIsSaidInABar() {
    View.Link waiting =
        new View.Link("/dev/ttyUSB0", "unplugged, waiting", 3, 0, 0, Optional.empty(), "");
    View view = new View(toCome.sheet(), waiting, toCome.seen());
    assertThat(Frame.of(view, USUAL, Glyphs.UNICODE).lines().get(0).pieces())
        .anyMatch(p -> p.look() == Look.BAR && p.text().contains("unplugged, waiting"));
    assertThat(shown(view)).contains("not kept");
    View nothing = new View(toCome.sheet(), waiting, Optional.empty());
    assertThat(shown(nothing)).contains("WAITING FOR THE FIRST SAMPLE");
  }

  @Test
  void textFromOutsideIsMadeHarmless() {
    String nasty = "A\u001b[2J\u202e\u0007B";
    JobSheet sheet = toCome.sheet();
    JobSheet named =
        new JobSheet(
            new JobIdentity(nasty, nasty, nasty),
            sheet.travel(),
            sheet.position(),
            sheet.settleNs(),
            sheet.closed(),
            sheet.open(),
            sheet.cams(),
            sheet.contacts(),
            sheet.acceptance(),
            sheet.torqueClosing(),
            sheet.torqueOpening(),
            sheet.motorClosing(),
            sheet.motorOpening());
    View.Link link = new View.Link(nasty, nasty, 1, 1, 0, Optional.of(nasty), nasty);
    List<String> lines =
        text(new View(named, link, toCome.seen()), new TerminalSize(120, 30), Glyphs.UNICODE);
    assertThat(String.join("", lines)).doesNotContain("\u001b", "\u202e", "\u0007").contains("�");
  }
}
