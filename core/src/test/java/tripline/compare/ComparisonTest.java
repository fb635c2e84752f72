package tripline.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static tripline.compare.Sketch.figure;
import static tripline.compare.Sketch.part;

import org.junit.jupiter.api.Test;
import tripline.compare.Note.Code;
import tripline.measure.Decision;
import tripline.result.Result.Measured;

class ComparisonTest {
  private static Sketch four(String name, double shift, double third) {
    return new Sketch(name).cam(1 + shift).cam(2 + shift).cam(3 + shift + third).cam(4 + shift);
  }

  private static Comparison compare(Sketch before, Sketch after) {
    return Comparison.of(before.account(), after.account());
  }

  @Test
  void aCamThatMovedLessThanTheStopsTellIsFoundAgainstTheOthers() {
    Comparison seen = compare(four("a", 0, 0), four("b", 0.008, 0.02));
    CamMove third = seen.cams().get(2);
    assertThat(third.move().seen()).isEqualTo(Seen.NO_MOVE);
    assertThat(third.seen()).isEqualTo(Seen.MOVED);
    assertThat(third.stated().orElseThrow().value()).isCloseTo(0.02, within(1e-9));
    assertThat(seen.cams()).filteredOn(c -> c.seen() == Seen.MOVED).hasSize(1);
    assertThat(seen.answer()).isEqualTo(Seen.MOVED);
    assertThat(seen.notes()).isEmpty();
  }

  @Test
  void allTogetherIsTheStopOrTheWholeGear() {
    Comparison seen = compare(four("a", 0, 0), four("b", -0.1, 0));
    assertThat(seen.cams()).allMatch(c -> c.seen() == Seen.MOVED);
    assertThat(seen.together().values())
        .singleElement()
        .satisfies(by -> assertThat(by.value()).isCloseTo(-0.1, within(1e-9)));
    assertThat(seen.notes()).extracting(Note::code).containsExactly(Code.TOGETHER);
    assertThat(seen.notes().get(0).message())
        .startsWith("While closing, 4 trip points moved by -0.100 turns together");
  }

  @Test
  void whatIsNotKnownStaysNotKnown() {
    Comparison seen =
        compare(new Sketch("a").cam(1).unseen().cam(3), new Sketch("b").cam(1).cam(2).cam(3));
    assertThat(seen.cams().get(1).seen()).isEqualTo(Seen.NOT_KNOWN);
    assertThat(seen.cams().get(1).move().by()).isEmpty();
    assertThat(seen.trips().get(1).move().before()).isEmpty();
    assertThat(seen.trips().get(1).move().after()).isPresent();
    assertThat(seen.trips().get(1).strokesBefore()).isZero();
    assertThat(seen.end(tripline.job.End.OPEN).backoff().by()).isEmpty();
    assertThat(seen.span()).isEqualTo(Movement.UNKNOWN);
    assertThat(seen.answer()).isEqualTo(Seen.NOT_KNOWN);
    assertThat(compare(new Sketch("a").cam(1).unseen(), new Sketch("b").cam(2).unseen()).answer())
        .as("one that moved is enough")
        .isEqualTo(Seen.MOVED);
  }

  @Test
  void withoutACommonOriginOnlyCamsAgainstEachOtherAreKnown() {
    Comparison seen = compare(four("a", 0, 0), four("b", 4.2, 0.1).from("first-reading", 0));
    assertThat(seen.cams()).allMatch(c -> c.move().by().isEmpty());
    assertThat(seen.cams().get(2).seen()).isEqualTo(Seen.MOVED);
    assertThat(seen.cams().get(0).seen()).isEqualTo(Seen.NOT_KNOWN);
    assertThat(seen.together()).isEmpty();
    assertThat(seen.notes()).extracting(Note::code).containsExactly(Code.OTHER_ORIGIN);
    assertThat(seen.answer()).isEqualTo(Seen.MOVED);
    assertThat(compare(four("a", 0, 0), four("b", 4.2, 0).from("first-reading", 0)).answer())
        .isEqualTo(Seen.NOT_KNOWN);
  }

  @Test
  void anOpenStopAtTheSpanOfAnotherSheetIsTheSamePlace() {
    Comparison seen =
        compare(
            four("a", 0, 0).from("open-stop", 10),
            four("b", 0.5, 0).from("open-stop", 10.5).sheet("other"));
    assertThat(Sketch.moved(seen, 1).orElseThrow().value()).isCloseTo(0, within(1e-12));
    assertThat(seen.cams().get(0).move().after().orElseThrow().value()).isEqualTo(1.5);
  }

  @Test
  void layingOneOverTheOtherAssumesThatTheCamsStayed() {
    Measured laid = figure(3, part("fit", 0.002), part("registration:reference", 0.001));
    Sketch after = new Sketch("b").cam(laid).cam(laid).cam(laid).reference("a");
    Comparison seen = compare(new Sketch("a").cam(3.3).cam(3).cam(3), after);
    assertThat(Sketch.moved(seen, 1)).isEmpty();
    assertThat(seen.notes()).extracting(Note::code).contains(Code.REGISTERED);
    // Over a third result the assumption is about other times.
    Sketch third = new Sketch("b").cam(laid).cam(laid).cam(laid).reference("r");
    assertThat(Sketch.moved(compare(new Sketch("a").cam(3.3).cam(3).cam(3), third), 1)).isPresent();
  }

  @Test
  void backoffsCountFromTheirOwnStop() {
    Measured then = figure(0.5, part("stop:open", 0.01));
    Measured now = figure(0.6, part("stop:open", 0.01));
    Comparison seen =
        compare(new Sketch("a").cam(3).backoff(then), new Sketch("b").cam(3).backoff(now));
    assertThat(seen.ends()).allMatch(e -> e.backoff().seen() == Seen.MOVED);
    assertThat(seen.answer()).isEqualTo(Seen.MOVED);
  }

  @Test
  void aChangedSheetIsShownWithWhatItWantsDifferently() {
    Measured at = figure(3, part("fit", 0.002));
    Sketch before = new Sketch("a").cam(at, 3.0, Decision.ACCEPT).cam(at).cam(at);
    Sketch after = new Sketch("b").cam(at, 3.5, Decision.REJECT).cam(at).sheet("other");
    Comparison seen = compare(before, after);
    assertThat(seen.sheet())
        .containsExactly(
            new SheetDifference("target", "c1", "3", "3.5"),
            new SheetDifference("cam", "c3", "there", ""),
            new SheetDifference("contact", "31-32", "there", ""));
    assertThat(seen.notes()).extracting(Note::code).containsExactly(Code.SHEET_CHANGED);
    assertThat(compare(before, after.sheet("sheet")).sheet()).isEmpty();
  }

  @Test
  void incompatibleResultsHaveTheirReason() {
    Account a = new Sketch("a").cam(3).account();
    refused(a, new Sketch("b").tag("FW-207").cam(3), "\"FW-207\", expected one of \"CW-114\"");
    refused(
        a,
        new Sketch("b").cam(3).sensor("drive", 1, 0.001),
        "on the drive side, expected the handwheel side");
    refused(
        a,
        new Sketch("b").cam(3).sensor("handwheel", 0.25, 0.001),
        "0.25 turns per unit of reading, expected 1.0");
    refused(a, new Sketch("b"), "none of the other's contacts");
    assertThat(Comparison.refusal(a, new Sketch("b").cam(9).account())).isEmpty();
  }

  private static void refused(Account before, Sketch after, String says) {
    assertThat(Comparison.refusal(before, after.account()).orElseThrow()).contains(says);
    assertThatThrownBy(() -> Comparison.of(before, after.account()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining(says);
  }
}
