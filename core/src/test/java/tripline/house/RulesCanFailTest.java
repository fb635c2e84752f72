package tripline.house;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.lang.ArchRule;
import java.util.Arrays;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tripline.house.bad.left.Leaning;
import tripline.house.bad.right.OpenManager;
import tripline.house.bad.right.Worldly;

class RulesCanFailTest {
  private static final String BAD = "tripline.house.bad";

  @Test
  void anArrowTheWrongWayIsSeenAndTheRightWayIsNot() {
    assertThat(broken(new Arrows(BAD, Map.of("left", Set.of())).rule(), Leaning.class)).isTrue();
    assertThat(broken(new Arrows(BAD, Map.of()).rule(), Leaning.class)).isTrue();
    assertThat(broken(new Arrows(BAD, Map.of("left", Set.of("right"))).rule(), Leaning.class))
        .isFalse();
  }

  @ParameterizedTest
  @MethodSource("worldly")
  void everyWayToTheOutsideWorldIsSeen(Class<?> type) {
    assertThat(broken(Prohibitions.noOutsideWorld(), type)).isTrue();
  }

  static Class<?>[] worldly() {
    Class<?>[] types = Worldly.class.getDeclaredClasses();
    assertThat(Arrays.stream(types)).hasSize(9);
    return types;
  }

  @Test
  void openClassesEmptyNamesAndUnstatedNullnessAreSeen() {
    assertThat(broken(Prohibitions.closedToExtension(), OpenManager.class)).isTrue();
    assertThat(broken(Prohibitions.tellingNames(), OpenManager.class)).isTrue();
    assertThat(broken(Prohibitions.statedNullness(), OpenManager.class)).isTrue();
    assertThat(broken(Prohibitions.closedToExtension(), Leaning.class)).isFalse();
    assertThat(broken(Prohibitions.tellingNames(), Leaning.class)).isFalse();
    assertThat(broken(Prohibitions.statedNullness(), Arrows.class)).isFalse();
  }

  @Test
  void aLibraryOutsideItsPackageIsSeen() {
    String library = BAD + ".right";
    assertThat(broken(Prohibitions.onlyIn(library, resideInAPackage("x..")), Leaning.class))
        .isTrue();
    assertThat(broken(Prohibitions.onlyIn(library, resideInAPackage(BAD + ".left")), Leaning.class))
        .isFalse();
  }

  private static boolean broken(ArchRule rule, Class<?> type) {
    return rule.evaluate(new ClassFileImporter().importClasses(type)).hasViolation();
  }
}
