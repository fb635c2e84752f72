package tripline.csv;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class NearestTest {
  /** The textbook example of the edit distance, from memory: kitten, sitting, 3. */
  @Test
  void distanceIsLevenshteins() {
    assertThat(Nearest.distance("kitten", "sitting")).isEqualTo(3);
    assertThat(Nearest.distance("", "abc")).isEqualTo(3);
    assertThat(Nearest.distance("abc", "abc")).isZero();
  }

  @Test
  void caseDoesNotCount() {
    assertThat(Nearest.to("time", List.of("tune", "TIME"))).contains("TIME");
  }

  @Test
  void nothingInCommonIsNotNear() {
    assertThat(Nearest.to("time", List.of("0.000", "", "abc"))).isEmpty();
  }
}
