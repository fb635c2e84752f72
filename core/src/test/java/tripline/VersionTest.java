package tripline;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class VersionTest {
  @Test
  void statesTheVersionOfTheBuild() {
    assertThat(Version.TEXT).isEqualTo(System.getProperty("tripline.version"));
  }
}
