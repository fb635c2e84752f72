package tripline.house;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

class HouseTest {
  private static final JavaClasses CORE =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("tripline");

  /**
   * As DEVELOPERS.md draws it: a new package, or a new arrow, is a line here and a reason there.
   */
  private static final Map<String, Set<String>> ALLOWED =
      Map.ofEntries(
          Map.entry("sample", Set.of()),
          Map.entry("measure", Set.of()),
          Map.entry("csv", Set.of("sample")),
          Map.entry("link", Set.of("sample")),
          Map.entry("capture", Set.of("link", "sample")),
          Map.entry("job", Set.of("sample")),
          Map.entry("reduce", Set.of("sample", "measure")),
          Map.entry("travel", Set.of("reduce", "job", "measure", "sample")),
          Map.entry("develop", Set.of("travel", "reduce", "job", "measure", "sample")),
          Map.entry("result", Set.of("measure")),
          Map.entry("compare", Set.of("result", "travel", "job", "measure")),
          Map.entry(
              "assess",
              Set.of("result", "develop", "travel", "reduce", "job", "measure", "sample")),
          Map.entry(
              "accept",
              Set.of(
                  "assess", "result", "develop", "travel", "reduce", "job", "measure", "sample")),
          Map.entry(
              "finding",
              Set.of(
                  "assess", "result", "develop", "travel", "reduce", "job", "measure", "sample")),
          Map.entry(
              "verdict",
              Set.of(
                  "accept", "finding", "assess", "result", "develop", "travel", "reduce", "job",
                  "measure", "sample")),
          Map.entry(
              "live",
              Set.of(
                  "verdict", "assess", "result", "develop", "travel", "reduce", "job", "measure",
                  "sample")));

  @Test
  void arrowsPointOneWay() {
    new Arrows("tripline", ALLOWED).rule().check(CORE);
  }

  @Test
  void everyPackageIsOnTheDrawing() {
    assertThat(CORE.stream().map(JavaClass::getPackageName).distinct())
        .allSatisfy(
            name ->
                assertThat(ALLOWED.keySet().stream().map("tripline."::concat))
                    .as("rooms of the drawing, for " + name)
                    .anyMatch(room -> name.equals("tripline") || name.equals(room)));
  }

  @Test
  void coreKnowsNothingOfTheOutsideWorld() {
    Prohibitions.noOutsideWorld().check(CORE);
  }

  @Test
  void publicClassesAreClosed() {
    Prohibitions.closedToExtension().check(CORE);
  }

  @Test
  void namesTell() {
    Prohibitions.tellingNames().check(CORE);
  }

  @Test
  void nullnessIsStated() {
    Prohibitions.statedNullness().check(CORE);
  }
}
