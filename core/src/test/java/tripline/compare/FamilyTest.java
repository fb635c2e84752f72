package tripline.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import tripline.measure.Estimate;

class FamilyTest {
  @Test
  void oneFigureIsJudgedAtFivePerCentAndManyEachAtTheirShare() {
    // Normal quantiles: 97.5 %, 99.5 %, 99.9 % (z(0.999) = 3.090232, JCGM 106:2012 Table 1).
    assertThat(new Family(1, true).factor()).isCloseTo(1.959964, within(1e-6));
    assertThat(new Family(5, true).factor()).isCloseTo(2.575829, within(1e-6));
    assertThat(new Family(25, true).factor()).isCloseTo(3.090232, within(1e-6));
    assertThat(new Family(0, true).factor()).isCloseTo(1.959964, within(1e-6));
  }

  @Test
  void movedIsSaidBeyondTheFactorOnEitherSide() {
    Family family = new Family(25, true);
    assertThat(family.seen(Optional.of(Estimate.of(0.0309, 0.01)))).isEqualTo(Seen.NO_MOVE);
    assertThat(family.seen(Optional.of(Estimate.of(0.031, 0.01)))).isEqualTo(Seen.MOVED);
    assertThat(family.seen(Optional.of(Estimate.of(-0.031, 0.01)))).isEqualTo(Seen.MOVED);
    assertThat(family.seen(Optional.empty())).isEqualTo(Seen.NOT_KNOWN);
    assertThat(family.seen(Optional.of(Estimate.exact(0)))).isEqualTo(Seen.NO_MOVE);
    assertThat(family.seen(Optional.of(Estimate.exact(1e-5)))).isEqualTo(Seen.MOVED);
    assertThat(family.seen(Optional.of(Estimate.exact(2e-15))))
        .as("rounding is no movement")
        .isEqualTo(Seen.NO_MOVE);
  }
}
