package tripline.harness.summary;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A folder whose maker kept a list of its own. */
class ManyResultsTest {
  private static final int COUNT = 250;

  @TempDir private Path folder;

  @Test
  void findsWhatWhoeverMadeTheFolderKnows() throws IOException {
    Map<String, ManyResults.Valve> made =
        ManyResults.write(Path.of("../recordings"), folder, COUNT, 7);
    Summary summary = Summary.of(folder);
    assertThat(summary.damaged()).isEmpty();
    assertThat(summary.others()).isZero();
    assertThat(summary.results()).isEqualTo(COUNT);
    assertThat(summary.actuators()).hasSameSizeAs(made.keySet());
    int adjusted = 0;
    for (Actuator actuator : summary.actuators()) {
      ManyResults.Valve valve = made.get(actuator.tag());
      assertThat(actuator.results()).hasSize(valve.results);
      assertThat(actuator.latest().file()).isEqualTo(valve.lastFile);
      assertThat(actuator.latest().decision().name().toLowerCase(Locale.ROOT))
          .isEqualTo(valve.lastDecision);
      assertThat(actuator.adjustments()).as(actuator.tag()).isEqualTo(valve.adjustments);
      adjusted += valve.adjustments;
    }
    assertThat(adjusted).isGreaterThan(10);
  }
}
