package tripline.harness.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tripline.measure.Decision;
import tripline.result.AcceptanceResult;
import tripline.result.AcceptanceResult.AcceptedTrip;
import tripline.result.AcceptanceResult.RepeatabilityResult;

/** Why strokes do not accept, in words somebody can act on. */
class AcceptanceReasonsTest {
  private static final Rounded ROUNDED = new Rounded("±");

  private static AcceptedTrip trip(
      String cam,
      Decision decision,
      @Nullable String reason,
      int strokes,
      @Nullable Integer needed) {
    return new AcceptedTrip(
        cam, null, "11-12", "closing", true, strokes, 0, 0.5, 0.0213, 0.5, 0.1, 0.4, 0.6, 9.7888,
        0.2085, 0.0392, List.of(), 0.25, 0.75, decision, reason, needed, 0.62, null);
  }

  private static AcceptanceResult accepted(
      Decision decision,
      @Nullable Integer opening,
      @Nullable Integer closing,
      AcceptedTrip... trips) {
    return new AcceptanceResult(
        decision,
        3,
        0.95,
        0.95,
        9.7888,
        3,
        3,
        opening,
        closing,
        List.of(trips),
        List.of(),
        List.of(),
        new RepeatabilityResult(null, 0, null, 2.7718, "", null));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "few-strokes | 1 | 3 | 1 full stroke, 3 asked for: 2 more strokes",
        "few-strokes | 2 | 5 | 2 full strokes, 3 asked for: 3 more strokes (5 in all) would settle"
            + " it, if they scatter as these do",
        "not-seen | 0 | 3 | no full stroke changed it on the way to its end: 3 more strokes",
        "scatter | 3 | 8 | 9.789 times its scatter of 0.021 turn does not fit the tolerance: 5 more"
            + " strokes (8 in all) would settle it, if they scatter as these do",
        "scatter | 3 |  | 9.789 times its scatter of 0.021 turn does not fit the tolerance: 100"
            + " strokes like these would not settle it; look for the cause of the scatter",
        "common | 3 |  | what all strokes share, ± 0.039 turns, leaves no room, and more strokes do"
            + " not reduce it: touch the hard stop again, more than once",
        "outlier | 3 |  | one stroke stands out, and an interval that assumes the normal law says"
            + " nothing then: find its cause, then record the strokes anew",
        "unsteady | 3 |  | its trip point moves from stroke to stroke, and an interval that assumes"
            + " repeats says nothing then: find the cause, then record the strokes anew",
        "outside | 3 |  | even read kindly, these strokes leave less than 95 % of future trips"
            + " within its tolerance",
        "readings | 3 |  | the position readings cannot be relied on",
        "no-target | 3 |  | its target is not known in turns: a hard stop or the span is missing",
      })
  void saysWhatIsMissing(String reason, int strokes, @Nullable Integer needed, String words) {
    AcceptedTrip trip = trip("close", Decision.UNDECIDED, reason, strokes, needed);
    AcceptanceResult accepted = accepted(Decision.UNDECIDED, 0, needed, trip);
    assertThat(new AcceptanceReasons(accepted, ROUNDED).reason(trip)).isEqualTo(words);
  }

  @Test
  void theHeadNamesTheCamsAndTheStrokesThatAreMissing() {
    AcceptedTrip good = trip("lift", Decision.ACCEPT, null, 3, null);
    AcceptedTrip open = trip("open", Decision.UNDECIDED, "scatter", 3, 8);
    assertThat(why(accepted(Decision.UNDECIDED, 5, 0, good, open)))
        .containsExactly("undecided over its strokes (cam open): needs 5 more strokes opening");
    assertThat(why(accepted(Decision.UNDECIDED, 1, 1, open)))
        .containsExactly("undecided over its strokes (all cams): needs 1 more stroke each way");
    assertThat(why(accepted(Decision.UNDECIDED, 2, 1, good, open)))
        .containsExactly(
            "undecided over its strokes (cam open): needs 2 more strokes opening and 1 more stroke"
                + " closing");
    assertThat(why(accepted(Decision.UNDECIDED, null, 0, good, open)))
        .containsExactly("undecided over its strokes (cam open)");
    assertThat(why(accepted(Decision.ACCEPT, 0, 0, good))).isEmpty();
    AcceptedTrip bad = trip("close", Decision.REJECT, "outside", 4, null);
    assertThat(AcceptanceReasons.why(accepted(Decision.REJECT, 0, 0, good, bad), Decision.REJECT))
        .containsExactly("rejected over its strokes: cam close");
  }

  private static List<String> why(AcceptanceResult accepted) {
    return AcceptanceReasons.why(accepted, Decision.UNDECIDED);
  }
}
