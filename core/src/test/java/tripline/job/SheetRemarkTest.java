package tripline.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class SheetRemarkTest {
  private final SheetRemark remark =
      new SheetRemark(
          SheetRemark.Severity.ERROR,
          "cam[0].trip[1]",
          List.of("contact[*].role", "travel.span"),
          "x");

  @Test
  void restsOnItsPathsAndOnWhatTheyAreWithin() {
    assertThat(remark.restsOn("travel.span")).isTrue();
    assertThat(remark.restsOn("travel")).isTrue();
    assertThat(remark.restsOn("cam")).isTrue();
    assertThat(remark.restsOn("cam[0]")).isTrue();
    assertThat(remark.restsOn("cam[0].trip")).isTrue();
    assertThat(remark.restsOn("contact")).isTrue();
    assertThat(remark.restsOn("contact[7].role")).isTrue();
    assertThat(remark.restsOn("contact[7]")).isTrue();
  }

  @Test
  void restsOnNothingElse() {
    assertThat(remark.restsOn("travel.span_tolerance")).isFalse();
    assertThat(remark.restsOn("cam[1]")).isFalse();
    assertThat(remark.restsOn("cam[0].trip[1].turns")).isFalse();
    assertThat(remark.restsOn("contact[7].channel")).isFalse();
    assertThat(remark.restsOn("c")).isFalse();
  }
}
