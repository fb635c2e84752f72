package tripline.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class NearestNameTest {
  /**
   * kitten/sitting = 3 is the textbook example of edit distance; ca/abc = 3 is what tells optimal
   * string alignment from the unrestricted Damerau distance, which gives 2 (both from memory).
   */
  @Test
  void slipsAreThoseOfTheTextbooks() {
    assertThat(NearestName.slips("kitten", "sitting")).isEqualTo(3);
    assertThat(NearestName.slips("ca", "abc")).isEqualTo(3);
    assertThat(NearestName.slips("tga", "tag")).isEqualTo(1);
    assertThat(NearestName.slips("", "span")).isEqualTo(4);
    assertThat(NearestName.slips("span", "span")).isZero();
  }

  @Test
  void aSlipIsFoundAndAnotherWordIsNot() {
    List<String> known = List.of("span", "span_tolerance", "lost_motion");
    assertThat(NearestName.of("sapn", known)).contains("span");
    assertThat(NearestName.of("Span_Tolerence", known)).contains("span_tolerance");
    assertThat(NearestName.of("lostmotion", known)).contains("lost_motion");
    assertThat(NearestName.of("colour", known)).isEmpty();
    assertThat(NearestName.of("x", List.of("y"))).isEmpty();
  }
}
