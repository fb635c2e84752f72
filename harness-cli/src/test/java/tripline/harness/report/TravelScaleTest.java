package tripline.harness.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tripline.harness.jobfile.JobFile;
import tripline.job.JobSheet;
import tripline.result.Result.Stretch;

class TravelScaleTest {
  private final JobSheet sheet =
      JobFile.read(Path.of("src/test/resources/sheets/full.toml")).sheet();
  private final TravelScale scale = TravelScale.of(sheet, 31);

  @Test
  void everyDrawingIsAsWideAsTheOthers() {
    Random random = new Random(5);
    for (int i = 0; i < 500; i++) {
      double from = random.nextDouble() * 31;
      double to = from + random.nextDouble() * (31 - from);
      assertThat(scale.bar(List.of(new Stretch(from, to)), Glyphs.UNICODE))
          .hasSize(TravelScale.WIDTH)
          .containsPattern("[█▌▐]");
      assertThat(
              scale.marks(
                  List.of(new PlannedTrip(from * 2 - 15, random.nextDouble())), Glyphs.UNICODE))
          .hasSize(TravelScale.WIDTH)
          .contains("┼");
    }
    assertThat(scale.ticks(Glyphs.ASCII)).hasSize(TravelScale.WIDTH);
  }

  @Test
  void aContactAndItsComplementFillTheTravel() {
    String below = scale.bar(List.of(new Stretch(0, 0.5)), Glyphs.ASCII);
    String above = scale.bar(List.of(new Stretch(0.5, 31)), Glyphs.ASCII);
    for (int c = 1; c < TravelScale.WIDTH - 1; c++) {
      assertThat("" + below.charAt(c) + above.charAt(c)).isIn("#-", "-#", "::", "##");
    }
    assertThat(below).containsOnlyOnce("#-");
  }

  @Test
  void mirroringTheTravelMirrorsTheBar() {
    JobSheet even = JobFile.read(Path.of("src/test/resources/doubtfulsheets/none.toml")).sheet();
    TravelScale symmetric = TravelScale.of(even, 31);
    String bar = symmetric.bar(List.of(new Stretch(0, 0.5), new Stretch(20, 29)), Glyphs.ASCII);
    String mirrored =
        symmetric.bar(List.of(new Stretch(2, 11), new Stretch(30.5, 31)), Glyphs.ASCII);
    assertThat(new StringBuilder(mirrored).reverse().toString()).isEqualTo(bar);
  }

  @Test
  void aShortStretchIsNeverLost() {
    assertThat(scale.bar(List.of(new Stretch(15.0, 15.01)), Glyphs.UNICODE))
        .containsPattern("[█▌▐]");
    assertThat(scale.bar(List.of(), Glyphs.UNICODE)).doesNotContainPattern("[█▌▐]");
  }
}
