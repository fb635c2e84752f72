package tripline.harness.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import tripline.harness.report.Glyphs;
import tripline.job.Direction;
import tripline.job.End;
import tripline.live.Guide;
import tripline.live.LiveAnswer;
import tripline.live.Now;
import tripline.live.Rig;
import tripline.live.Sites;
import tripline.live.Step;
import tripline.live.Step.Phase;
import tripline.live.Whereabouts;

/** Steps in plain words, over sessions that go through all of them. */
class WordsTest {
  private final Map<Phase, Words> said = new LinkedHashMap<>();
  private Rig rig = Sites.rig(Sites.FINE, 0.2, 2.5, Sites.SPAN - 0.2, 6);

  private Words say() {
    LiveAnswer answer = rig.answer();
    Now now = rig.live.now();
    Optional<Whereabouts> where = Whereabouts.of(answer, now);
    Step step = Guide.next(answer, where, now);
    Words words = Words.of(step, where, answer.result(), Glyphs.UNICODE);
    assertThat(Words.of(step, where, answer.result(), Glyphs.ASCII).toString()).matches("[ -~]*");
    said.putIfAbsent(step.phase(), words);
    return words;
  }

  @Test
  void saysEveryStepOfTheUsualOrder() {
    assertThat(say().act()).isEqualTo("Run by hand to the stop and touch it; do not force it.");
    rig.turn(-100);
    assertThat(say().title()).isEqualTo("CLOSED END: IS THIS THE STOP?");
    rig.mark(End.CLOSED);
    assertThat(say().title()).isEqualTo("CLOSED END: GO PAST THE TARGET FIRST");
    rig.turn(0.6);
    assertThat(say().why()).anyMatch(w -> w.startsWith("Last approach: changed 0.2"));
    rig.turn(-0.6);
    Words touched = say();
    assertThat(touched.title()).isEqualTo("CLOSED END: STOP TOUCHED");
    assertThat(touched.act()).startsWith("Turn toward open: 0.8");
    assertThat(touched.why().get(0))
        .startsWith("The first 0.3")
        .contains("(11")
        .endsWith("only take up the lost motion; the drive follows after that.");
    rig.turn(0.5);
    assertThat(say().title()).isEqualTo("CLOSED END: BACK OFF");
    rig.turn(0.31);
    Words turn = say();
    assertThat(turn.title()).isEqualTo("CLOSED END: TURN NOW");
    assertThat(turn.act())
        .isEqualTo("Watch 11-12 and turn the adjuster of cam close until it just opens.");
    assertThat(turn.why())
        .contains(
            "Not tripped yet: turn it the way it turns while travelling toward closed.",
            "Isolated, locked out, proved dead?");
    rig.adjust("close", true, Direction.CLOSING);
    assertThat(say().act()).isEqualTo("11-12 has changed: take the tool away and press a.");
    rig.adjusted();
    assertThat(say().title()).isEqualTo("CLOSED END: PROVE IT: GO PAST THE POINT");
    rig.turn(1.1);
    assertThat(say().title()).isEqualTo("CLOSED END: PROVE IT: COME BACK");
    rig.turn(-1.6);
    Words next = say();
    assertThat(next.title()).isEqualTo("OPEN END: FIND THE STOP");
    assertThat(next.why()).anyMatch(w -> w.matches("By the sheet some (9|10)\\..* to go\\."));
    rig.turn(100);
    rig.mark(End.OPEN);
    rig.turn(-2);
    assertThat(say().title()).isEqualTo("OPEN END: COME TO THE TARGET");
    assertThat(said.keySet()).containsAll(EnumSet.complementOf(EnumSet.copyOf(REST)));
  }

  /** Set too early it is turned back past the point first, and forth again to be set. */
  @Test
  void turnsBackWhatHasTrippedAlready() {
    rig = Sites.rig(Sites.FINE, 0.85, 2.5, Sites.SPAN - 0.53, 8);
    rig.turn(-100);
    rig.mark(End.CLOSED);
    rig.turn(2);
    rig.turn(-1.5);
    Words turn = say();
    assertThat(turn.title()).isEqualTo("CLOSED END: TURN NOW");
    assertThat(turn.act())
        .isEqualTo(
            "Watch 11-12 and turn the adjuster of cam close until it closes; pause, then back until"
                + " it just opens.");
    assertThat(turn.why())
        .contains(
            "Tripped already: first turn it the other way from how it turns while travelling"
                + " toward closed.");
    rig.adjust("close", false, Direction.CLOSING);
    Words back = say();
    assertThat(back.act())
        .isEqualTo("Watch 11-12 and turn the adjuster of cam close until it just opens.");
    assertThat(back.why()).anyMatch(w -> w.startsWith("Not tripped yet"));
    rig.adjust("close", true, Direction.CLOSING);
    assertThat(say().title()).isEqualTo("CLOSED END: TRIPPED");
  }

  private static final Set<Phase> REST =
      EnumSet.of(Phase.NO_POSITION, Phase.STROKE, Phase.ACCEPTED, Phase.REJECTED);

  @Test
  void saysHowItEnds() {
    rig = Sites.rig(Sites.FINE, 0.5, 2.5, Sites.SPAN - 0.53, 7);
    rig.turn(-100);
    rig.mark(End.CLOSED);
    rig.turn(100);
    rig.mark(End.OPEN);
    Words stroke = say();
    assertThat(stroke.title()).isEqualTo("BOTH ENDS ARE RIGHT");
    assertThat(stroke.why()).containsExactly("Not decided yet: 33-34, cam quarter.");
    rig.turn(-100);
    Words accepted = say();
    assertThat(accepted.title()).isEqualTo("ACCEPTED");
    assertThat(accepted.why().get(0)).contains("flameproof joints", "local codes govern");
  }

  @Test
  void countsTurnsAsAHandDoes() {
    Speech speech = new Speech(Glyphs.UNICODE);
    assertThat(speech.both(0.32)).isEqualTo("0.32 turn (115°)");
    assertThat(speech.both(1.82)).isEqualTo("1.82 turns (1 turn + 295°)");
    assertThat(speech.both(3.05)).isEqualTo("3.05 turns (3 turns + 18°)");
    assertThat(speech.both(0.9999)).isEqualTo("1.00 turn (1 turn + 0°)");
    assertThat(speech.brief(2.5)).isEqualTo("2 + 180°");
    assertThat(new Speech(Glyphs.ASCII).both(0.25)).isEqualTo("0.25 turn (90 deg)");
    assertThat(Speech.decimals(-0.0004, 2)).isEqualTo("0.00");
    assertThat(Speech.decimals(-0.04, 2)).isEqualTo("-0.04");
  }
}
