package tripline.harness.ending;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EndRequestTest {
  @ParameterizedTest
  @ValueSource(longs = {0, 1, Long.MAX_VALUE - 1_000, -5_000_000_000L})
  void onlyASignalThatComesLaterInsists(long firstNs) {
    EndRequest request = new EndRequest();
    assertThat(request.getAsBoolean()).isFalse();
    assertThat(request.insists(firstNs)).isFalse();
    assertThat(request.getAsBoolean()).isTrue();
    assertThat(request.insists(firstNs)).isFalse();
    assertThat(request.insists(firstNs + EndRequest.SAME_NS)).isFalse();
    assertThat(request.insists(firstNs + EndRequest.SAME_NS + 1)).isTrue();
  }
}
