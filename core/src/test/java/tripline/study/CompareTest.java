package tripline.study;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import tripline.compare.Comparison;
import tripline.compare.Note;
import tripline.compare.Seen;
import tripline.study.ComparedPair.Meeting;
import tripline.study.ComparedPair.Moving;

/**
 * A small study of comparisons with fixed seeds; bounds allow what so few pairs can tell. The full
 * one is {@link CompareStudy}.
 */
class CompareTest {
  @Test
  void aPairInWhichNothingMovedSeldomShowsAMovement() {
    CompareScore score = CompareStudy.of(Meeting.ANEW, Moving.NOTHING, 1, 20);
    // Two stops a pair decide most of it: twenty pairs are some forty independent figures.
    assertThat(score.coverage()).isBetween(0.87, 1.0);
    assertThat(score.againstCoverage()).isBetween(0.90, 1.0);
    assertThat(score.alarms).isLessThan(5);
  }

  @Test
  void grossMovementsAreFoundAndUnmovedCamsAreNotAccused() {
    CompareScore score = CompareStudy.of(Meeting.AS_LEFT, Moving.SOME, 1, 8);
    score.merge(CompareStudy.of(Meeting.ZERO_LOST, Moving.SOME, 1, 6));
    assertThat(score.gross).isGreaterThan(2);
    assertThat(score.grossFound).isEqualTo(score.gross);
    assertThat(score.wronglyMoved).isLessThan(5);
    assertThat(score.coverage()).isBetween(0.90, 1.0);
  }

  @Test
  void whatAReferenceMadeAgreeIsNotTakenForAFinding() {
    Comparison all = ComparedPair.of(Meeting.ZERO_LOST, Moving.ALL, 5).comparison();
    assertThat(all.notes()).extracting(Note::code).contains(Note.Code.REGISTERED);
    assertThat(all.answer()).isEqualTo(Seen.NOT_KNOWN);
  }
}
