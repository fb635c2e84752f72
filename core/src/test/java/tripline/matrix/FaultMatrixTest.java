package tripline.matrix;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A few seeds of the fault matrix; the whole of it is {@link FaultMatrix}. */
class FaultMatrixTest {
  private static final int VARIANTS = 5;
  private static final int HEALTHY = 15;

  static Stream<Fault> faults() {
    return Faults.all().stream();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("faults")
  void everyGrossFaultUnderItsOwnNameAndNoOther(Fault fault) {
    Row row = FaultMatrix.row(fault, VARIANTS);
    assertThat(row.stories).as(fault.code()).isEmpty();
    assertThat(row.clean()).isTrue();
    assertThat(row.found).as("specimens found").isPositive();
  }

  @Test
  void nothingIsSaidOfValvesThatAreRight() {
    FaultMatrix.Health health = FaultMatrix.Health.of(HEALTHY, 5000);
    assertThat(health.stories).isEmpty();
    assertThat(health.accepted).isEqualTo(HEALTHY);
  }
}
