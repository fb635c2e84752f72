package tripline.harness;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.belongToAnyOf;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;
import tripline.house.Prohibitions;

/** The rules themselves, and proof that they can fail, lie in core's tests. */
class HarnessHouseTest {
  private static final JavaClasses HARNESS =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("tripline.harness");

  @Test
  void nativeCodeIsKnownInOnePackage() {
    Prohibitions.onlyIn("com.fazecast..", resideInAPackage("tripline.harness.serial"))
        .check(HARNESS);
    Prohibitions.onlyIn("com.sun.jna..", resideInAPackage("tripline.harness.serial"))
        .check(HARNESS);
  }

  @Test
  void theCommandLineLibraryIsKnownToCommandsAndMain() {
    Prohibitions.onlyIn(
            "picocli..", resideInAPackage("tripline.harness.command").or(belongToAnyOf(Main.class)))
        .check(HARNESS);
  }

  @Test
  void theTomlLibraryIsKnownInOnePackage() {
    Prohibitions.onlyIn("org.tomlj..", resideInAPackage("tripline.harness.jobfile")).check(HARNESS);
  }

  @Test
  void theLoggingBackEndIsKnownAtTheTop() {
    Prohibitions.onlyIn("ch.qos.logback..", resideInAPackage("tripline.harness")).check(HARNESS);
  }

  @Test
  void publicClassesAreClosed() {
    Prohibitions.closedToExtension().check(HARNESS);
  }

  @Test
  void namesTell() {
    Prohibitions.tellingNames().check(HARNESS);
  }

  @Test
  void nullnessIsStated() {
    Prohibitions.statedNullness().check(HARNESS);
  }
}
