package tripline.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import tripline.live.TurningPoints.By;
import tripline.live.TurningPoints.Followed;
import tripline.truth.Rng;

/**
 * The short list stands for the whole past: against the play operator stepped reading by reading.
 */
class TurningPointsTest {
  /** Play stepped along every reading, from both places it may have stood in at first. */
  private static final class Stepped {
    final double play;
    double least;
    double most;

    Stepped(double play, double reading) {
      this.play = play;
      least = reading - play;
      most = reading;
    }

    void step(double reading) {
      least = Math.min(Math.max(least, reading - play), reading);
      most = Math.min(Math.max(most, reading - play), reading);
    }
  }

  @Test
  void followsAsTheOperatorDoes() {
    Rng rng = new Rng(5);
    for (int run = 0; run < 200; run++) {
      TurningPoints turns = new TurningPoints();
      double reading = rng.uniform(-1, 1);
      Stepped[] operators = new Stepped[8];
      for (int p = 0; p < operators.length; p++) {
        operators[p] = new Stepped(0.1 * p, reading);
      }
      turns.add(reading);
      double pull = rng.uniform(0, 0.2);
      for (int k = 0; k < 400; k++) {
        reading += 0.1 * rng.gaussian() - pull * reading;
        turns.add(reading);
        for (Stepped s : operators) {
          s.step(reading);
          Followed followed = turns.follow(r -> r - s.play, r -> r);
          assertThat(followed.value() - followed.half()).isCloseTo(s.least, within(1e-12));
          assertThat(followed.value() + followed.half()).isCloseTo(s.most, within(1e-12));
        }
      }
    }
  }

  @Test
  void doesNotKnowMoreThanWasTravelled() {
    TurningPoints turns = new TurningPoints();
    assertThat(turns.follow(r -> r, r -> r).value()).isNaN();
    turns.add(3);
    assertThat(turns.follow(r -> r - 0.5, r -> r)).isEqualTo(new Followed(2.75, 0.25, By.NOTHING));
    turns.add(3.25);
    Followed on = turns.follow(r -> r - 0.5, r -> r);
    assertThat(on.half()).isCloseTo(0.125, within(1e-12));
    turns.add(4);
    assertThat(turns.follow(r -> r - 0.5, r -> r)).isEqualTo(new Followed(3.5, 0, By.LOWER));
    turns.add(3.75);
    assertThat(turns.follow(r -> r - 0.5, r -> r)).isEqualTo(new Followed(3.5, 0, By.LOWER));
    assertThat(turns.sinceTurn(0.1)).isEqualTo(-0.25);
    assertThat(turns.sinceTurn(0.3)).isEqualTo(0.75);
    turns.add(3);
    assertThat(turns.follow(r -> r - 0.5, r -> r)).isEqualTo(new Followed(3, 0, By.UPPER));
  }

  /** Loops within loops, each a little smaller: the list ends, the reading now is still right. */
  @Test
  void staysShortWhateverComes() {
    TurningPoints turns = new TurningPoints();
    for (int k = 0; k < 500; k++) {
      turns.add((k % 2 == 0 ? 1 : -1) * Math.pow(0.99, k));
    }
    assertThat(turns.last()).isEqualTo(-Math.pow(0.99, 499));
    assertThat(turns.highest()).isEqualTo(1);
    assertThat(turns.lowest()).isEqualTo(-0.99);
    TurningPoints copy = turns.copy();
    copy.add(7);
    assertThat(turns.highest()).isEqualTo(1);
  }
}
