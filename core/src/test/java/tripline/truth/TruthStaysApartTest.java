package tripline.truth;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import org.junit.jupiter.api.Test;

/** The model must not borrow from what it judges. */
class TruthStaysApartTest {
  @Test
  void modelKnowsTheVocabularyOnly() {
    JavaClasses model =
        new ClassFileImporter()
            .withImportOption(
                location -> !location.contains("Test.class") && !location.contains("Test$"))
            .importPackages("tripline.truth");
    classes()
        .that()
        .resideInAPackage("tripline.truth")
        .should()
        .onlyDependOnClassesThat()
        .resideInAnyPackage("java..", "tripline.truth", "tripline.sample", "tripline.job")
        .check(model);
  }
}
